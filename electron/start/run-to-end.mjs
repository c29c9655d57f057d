import { spawn } from 'node:child_process';
import process from 'node:process';
import os from 'node:os';

const PASSED_ON = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/**
 * Runs a program with this one's terminal, passes signals on to it, and answers its exit status.
 * A child ended by a signal gives 128 + the signal's number, as shells count it.
 */
export function runToEnd(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { stdio: 'inherit', ...options });
    // Ctrl-C in a terminal reaches the child by itself; sent on, it would arrive twice.
    const pass = (signal) => (signal === 'SIGINT' && process.stdin.isTTY) || child.kill(signal);
    for (const signal of PASSED_ON) process.on(signal, pass);
    const end = (status) => {
      for (const signal of PASSED_ON) process.off(signal, pass);
      resolve(status);
    };
    child.on('error', (error) => {
      process.stderr.write(`${command} could not be started: ${error.message}\n`);
      end(127);
    });
    child.on('exit', (code, signal) => end(code ?? 128 + (os.constants.signals[signal] ?? 0)));
  });
}
