// The door of every npm script: plain JavaScript, so that it runs on the Node a person already has (20 or later).
// It installs what the lock file asks for, then runs the wanted task on the pinned Node.
import path from 'node:path';
import process from 'node:process';
import { installIfNeeded } from './install.mjs';
import { pinnedNode } from './pinned-node.mjs';
import { runToEnd } from './run-to-end.mjs';
import { root, stepsOf, taskNames } from './tasks.mjs';

const OLDEST_NODE = 20;
/** Where Node keeps what it made of our sources, by their content: a command starts in two thirds of the time. */
const COMPILED = path.join(root, 'node_modules', '.cache', 'compiled');

/** Says one line to the person; never on standard output, which belongs to the task's own answer. */
function say(line) {
  process.stderr.write(`${line}\n`);
}

async function main([task, ...given]) {
  if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
    say(`Trunnion needs Node ${OLDEST_NODE} or later, and this is ${process.version}. Install a newer Node, then try again.`);
    return 1;
  }
  const steps = stepsOf(task, given);
  if (steps === null) {
    say(`There is no task "${task ?? ''}". The tasks are: ${taskNames.join(', ')}.`);
    return 2;
  }
  if (!(await installIfNeeded(root, say))) return 1;
  const node = await pinnedNode(root, say);
  return node === null ? 1 : runSteps(node, steps);
}

/** One after the other, stopping at the first that fails. */
async function runSteps(node, steps) {
  for (const { name, args, env, whereThePersonStands } of steps) {
    if (steps.length > 1) say(`> ${name}`);
    const status = await runToEnd(node, args, { cwd: whereThePersonStands === true ? personsFolder() : root, env: { NODE_COMPILE_CACHE: COMPILED, ...env, ...process.env } });
    if (status !== 0) return status;
  }
  return 0;
}

/** npm moves to the project's folder before it runs a script and notes where the person was. */
function personsFolder() {
  return (process.env.npm_lifecycle_event === 'trunnion' && process.env.INIT_CWD) || process.cwd();
}

process.exitCode = await main(process.argv.slice(2));
