import { twoWay } from '../two-way.ts';

/** The program's end of the line to the stage, where the pages are. */
export const stage = twoWay({
  send: (message) => {
    if (process.connected) process.send?.(message);
  },
  onMessage: (hear) => void process.on('message', hear),
});
process.on('disconnect', () => stage.end('the stage is gone'));
