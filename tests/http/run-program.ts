import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

/** Starts one of the program's commands as a process of its own; it ends with the test at the latest. */
export function runProgram(
  command: 'main' | 'restore',
  env: Record<string, string>,
  ...args: string[]
): ChildProcessWithoutNullStreams {
  const program = fileURLToPath(new URL(`../../server/${command}.ts`, import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', program, ...args], {
    env: { PATH: process.env.PATH ?? '', PORT: '0', ...env },
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return child;
}

/** The address that the program prints when it is ready. */
export async function addressOf(child: ChildProcessWithoutNullStreams): Promise<string> {
  let text = '';
  for await (const chunk of child.stdout) {
    text += String(chunk);
    const url = /http:\/\/\S+/.exec(text)?.[0];
    if (url !== undefined) return url;
  }
  throw new Error(`the program ended before it was ready: ${text}`);
}
