import { EventEmitter } from 'node:events';
import { describe, expect, test, vi } from 'vitest';

interface Exposed {
  operations: Record<string, (request: unknown) => Promise<unknown>>;
  onPush: (listener: (...told: unknown[]) => void) => () => void;
}
const exposed = vi.hoisted((): { name: string; functions: unknown } => ({ name: '', functions: null }));
const renderer = Object.assign(new EventEmitter(), { invoke: vi.fn((...sent: unknown[]) => Promise.resolve({ sent })) });
vi.mock('electron', () => ({
  contextBridge: {
    exposeInMainWorld(name: string, functions: unknown) {
      exposed.name = name;
      exposed.functions = functions;
    },
  },
  get ipcRenderer() {
    return renderer;
  },
}));
vi.stubGlobal('OPERATION_NAMES', ['yard.show', 'car.add']);
await import('../../electron/preload.ts');
const { operations, onPush } = exposed.functions as Exposed;

describe('what the preload script puts into the page', () => {
  test('is one function for each operation and one for the pushes, nothing else', () => {
    expect(exposed.name).toBe('trunnion');
    expect(Object.keys(exposed.functions as Exposed)).toEqual(['operations', 'onPush']);
    expect(Object.keys(operations)).toEqual(['yard.show', 'car.add']);
  });

  test('a function sends only its own request, whatever more it is given', async () => {
    const ask = operations['yard.show'] as (...given: unknown[]) => Promise<unknown>;
    expect(await ask({ today: '2026-11-25' }, 'other-channel')).toEqual({ sent: ['operation:yard.show', { today: '2026-11-25' }] });
  });

  test('a listener is told what was pushed and never gets the event, and can stop', () => {
    const heard: unknown[][] = [];
    const stop = onPush((...told) => heard.push(told));
    renderer.emit('push', { sender: 'the way back' }, { kind: 'changed' });
    stop();
    renderer.emit('push', {}, { kind: 'changed' });
    expect(heard).toEqual([[{ kind: 'changed' }]]);
    expect(renderer.listenerCount('push')).toBe(0);
  });
});
