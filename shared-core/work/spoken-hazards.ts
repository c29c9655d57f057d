import type { Hazard } from './hazard.ts';
import type { SheetStep } from './sheet-step.ts';

type Spoken = Pick<SheetStep, 'text' | 'turn' | 'access' | 'hazards'>;

/** Words that speak of a hazard, and the hazards of which one must then be marked somewhere on the sheet; the first is the one asked about. Ours, no source. */
const WORDS: readonly { readonly words: RegExp; readonly of: readonly [Hazard, ...Hazard[]] }[] = [
  { words: /orange cables?|high[- ]voltage/i, of: ['high-voltage'] },
  { words: /airbags?|belt tensioners?/i, of: ['airbag'] },
  { words: /\bjack(?:s|ed|ing)?\b|\bax(?:le|el) stands?\b|\bon(?:to)? (?:its |the |two |four )?stands\b|\b(?:raise|lift) (?:the |one |it |its )?(?:car|front|rear|side|wheels?)\b|\bramps\b/i, of: ['lifting'] },
  { words: /\bfuel (?:lines?|pipes?|hoses?|tank|rail|pump|filter)\b|\b(?:petrol|gasoline)\b/i, of: ['fuel', 'fuel-pressure'] },
  { words: /\bbrake (?:fluid)\b/i, of: ['brake-fluid', 'brakes'] },
  { words: /\bcalipers?\b|\bbrake (?:pads?|shoes?|drums?|discs?|rotors?|hoses?|pipes?|lines?)\b|\bbleed (?:the )?brakes?\b|(?<!worn )\blinings?\b/i, of: ['brakes', 'old-linings'] },
  { words: /\basbestos\b/i, of: ['old-linings'] },
  { words: /\brefrigerant\b/i, of: ['refrigerant'] },
  { words: /\bcoil springs?\b|\bspring compressors?\b|\bsuspension springs?\b|\bsprings? (?:off|out)\b/i, of: ['springs'] },
  { words: /\bstart the engine\b|\b(?:run|idle|idling|running) (?:the )?engine\b|\bengine (?:runs?|running|idling)\b/i, of: ['running-engine', 'hot'] },
  { words: /\bbattery (?:off|out|poles?|terminals?|leads?|acid)\b/i, of: ['battery', 'airbag', 'high-voltage'] },
  { words: /\bcoolant\b|\bantifreeze\b/i, of: ['coolant', 'hot'] },
  { words: /\bold oil\b|\bdrain the oil\b|\boil out\b/i, of: ['used-oil', 'hot'] },
];

/** Any of them says what a drain can do. */
const DRAINS: readonly [Hazard, ...Hazard[]] = ['hot', 'used-oil', 'coolant', 'fuel', 'fuel-pressure', 'brake-fluid', 'high-voltage', 'battery'];

/** A hazard of which a step speaks, and by what. */
export interface SpokenHazard {
  readonly hazard: Hazard;
  /** The words themselves; null where its turn or what it opens says so. */
  readonly words: string | null;
  readonly by: 'words' | 'drain' | 'raised';
}

/**
 * Hazards of which a step speaks and that nothing on its sheet marks: a question to the keeper, never a refusal.
 *
 * @example unmarkedHazards({ text: 'Jack the car up.', ... }, []) //=> [{ hazard: 'lifting', words: 'Jack', by: 'words' }]
 */
export function unmarkedHazards(step: Spoken, marked: readonly Hazard[]): readonly SpokenHazard[] {
  const has = (of: readonly Hazard[]) => of.some((one) => marked.includes(one) || step.hazards.includes(one));
  const found = WORDS.flatMap(({ words, of }): SpokenHazard[] => {
    const said = words.exec(step.text)?.[0];
    return said === undefined || has(of) ? [] : [{ hazard: of[0], words: said, by: 'words' }];
  });
  const raised = step.access?.way === 'open' && /\braised\b|\bwheels? off\b|\bin the air\b/i.test(step.access.name) && !has(['lifting']);
  const all = [...found, ...(raised ? [{ hazard: 'lifting', words: null, by: 'raised' } as const] : []), ...(step.turn === 'drain' && !has(DRAINS) ? [{ hazard: 'hot', words: null, by: 'drain' } as const] : [])];
  return all.filter((one, at) => all.findIndex((other) => other.hazard === one.hazard) === at);
}
