/** The line between the program and the stage: whole values in either direction, in order. */
export interface Line {
  send(message: unknown): void;
  onMessage(hear: (message: unknown) => void): void;
}

type Answer = (...given: never[]) => unknown;

/** Asks the other side by name, and answers what it asks. */
export interface TwoWay {
  /** Rejects where the other side throws, has no such name, or is gone. */
  ask(name: string, ...given: readonly unknown[]): Promise<unknown>;
  /** Asks without waiting; that the other side is gone is no fault. */
  tell(name: string, ...given: readonly unknown[]): void;
  answer(answers: Readonly<Record<string, Answer>>): void;
  /** Ends every question that is still open. */
  end(why: string): void;
}

type Message =
  | { readonly kind: 'ask'; readonly id: number; readonly name: string; readonly given: readonly unknown[] }
  | { readonly kind: 'answer'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'fault'; readonly id: number; readonly why: string };

/** Both ends of the line speak alike. @example twoWay(line).ask('open-window', 1) */
export function twoWay(line: Line): TwoWay {
  const answers = new Map<string, Answer>();
  const open = new Map<number, { readonly resolve: (value: unknown) => void; readonly reject: (why: Error) => void }>();
  let last = 0;
  let ended: string | null = null;

  const settle = (id: number, how: (question: { resolve: (value: unknown) => void; reject: (why: Error) => void }) => void) => {
    const question = open.get(id);
    open.delete(id);
    if (question !== undefined) how(question);
  };
  const reply = async ({ id, name, given }: Extract<Message, { kind: 'ask' }>) => {
    try {
      const run = answers.get(name);
      if (run === undefined) throw new Error(`nothing is rehearsed by the name ${name}`);
      line.send({ kind: 'answer', id, value: await run(...(given as never[])) });
    } catch (error) {
      line.send({ kind: 'fault', id, why: error instanceof Error ? error.message : String(error) });
    }
  };
  line.onMessage((raw) => {
    const message = raw as Message;
    if (message.kind === 'ask') void reply(message);
    else if (message.kind === 'answer') settle(message.id, ({ resolve }) => resolve(message.value));
    else settle(message.id, ({ reject }) => reject(new Error(message.why)));
  });

  const ask = (name: string, ...given: readonly unknown[]): Promise<unknown> => {
    if (ended !== null) return Promise.reject(new Error(ended));
    const id = (last += 1);
    return new Promise((resolve, reject) => {
      open.set(id, { resolve, reject });
      line.send({ kind: 'ask', id, name, given });
    });
  };
  return {
    ask,
    tell: (name, ...given) => void ask(name, ...given).catch(() => undefined),
    answer: (more) => Object.entries(more).forEach(([name, run]) => answers.set(name, run)),
    end: (why) => {
      ended = why;
      for (const id of [...open.keys()]) settle(id, ({ reject }) => reject(new Error(why)));
    },
  };
}
