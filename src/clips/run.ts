import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { InputError } from '../errors/input-error.js';

/** What every run begins with: quiet, never asking, reading nothing but what it is told. */
export const quietly = ['-hide_banner', '-nostdin', '-v', 'error'] as const;

/** A file as the programs take it literally, whatever its name holds: leading dash, colon, blank, line break. */
export const fileUrl = (path: string): string => `file:${resolve(path)}`;

/** Only files are read: a playlist may not send the programs to the network. */
export const onlyFiles = ['-protocol_whitelist', 'file,pipe'] as const;

/** The most that is kept of what a program complains about. */
const keptComplaints = 4000;

/** A program that runs. */
export interface Running {
  readonly stdout: Readable;
  readonly stdin: Writable;
  /** Resolves when the program has ended and all it wrote has been taken; never rejects. */
  readonly ended: Promise<Ended>;
  /** What it has complained about so far. */
  complaints(): string;
  /** Ends it at once. */
  kill(): void;
}

export interface Ended {
  /** Exit code; undefined when it was ended by a signal or never started. */
  readonly code: number | undefined;
  readonly signal: string | undefined;
  /** Why it could not be started. */
  readonly failure: string | undefined;
}

const running = new Set<ChildProcess>();

function killAll(): void {
  for (const child of running) child.kill('SIGKILL');
}

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Ends them before anyone removes what they write, then lets the signal do what it would have done without us. */
function onSignal(signal: NodeJS.Signals): void {
  killAll();
  unwatch();
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

function unwatch(): void {
  process.off('exit', killAll);
  for (const signal of signals) process.off(signal, onSignal);
}

/** Programs of ours that are left must not outlive the process. */
function watch(child: ChildProcess): void {
  if (running.size === 0) {
    process.on('exit', killAll);
    for (const signal of signals) process.prependListener(signal, onSignal);
  }
  running.add(child);
  const forget = () => {
    running.delete(child);
    if (running.size === 0) unwatch();
  };
  child.once('close', forget).once('error', forget);
}

/** Starts ffmpeg or ffprobe. @param input whether something will be written to its standard input */
export function start(program: string, args: readonly string[], input = false): Running {
  const child = spawn(program, args, {
    stdio: [input ? 'pipe' : 'ignore', 'pipe', 'pipe'],
    windowsHide: true,
  });
  watch(child);
  let complaints = '';
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    if (complaints.length < keptComplaints) complaints += text;
  });
  const ended = new Promise<Ended>((done) => {
    child.once('error', (error: NodeJS.ErrnoException) =>
      done({ code: undefined, signal: undefined, failure: error.code ?? error.message }),
    );
    child.once('close', (code, signal) =>
      done({ code: code ?? undefined, signal: signal ?? undefined, failure: undefined }),
    );
  });
  // A program that ends early breaks the pipe to it: told by `ended`, not by an error of the pipe.
  child.stdin?.on('error', () => undefined);
  return {
    stdout: child.stdout as Readable,
    stdin: child.stdin as Writable,
    ended,
    complaints: () => complaints,
    kill: () => void child.kill('SIGKILL'),
  };
}

/**
 * What a program complained about, as one short clause: its first line without the names of its inner parts and the file.
 * Empty when it said nothing.
 */
export function complaint(text: string): string {
  const lines = text
    .split(/\r?\n|\r/)
    .map((line) =>
      line
        .replace(/^(\s*\[[^\]]*\]\s*)+/, '')
        .replace(/^(Error opening input( file)?|Error opening output( file)?)[: ]*/i, '')
        .replace(/^file:.*?: (?=[A-Z])/s, '')
        .trim()
        .replace(/[.:]$/, ''),
    )
    .filter((line) => line !== '' && !line.startsWith('file:') && !/^Last message repeated/.test(line));
  return (lines[0] ?? '').slice(0, 200);
}

/** The complaint in brackets, to follow a clause of ours. */
export const inBrackets = (text: string): string => (complaint(text) === '' ? '' : ` (${complaint(text)})`);

/** The problem of a program that did not start, or was ended by another; undefined when it ended by itself. */
export function brokenOff(name: string, { failure, signal }: Ended): InputError | undefined {
  if (failure !== undefined)
    return new InputError({ what: `${name} cannot be started (${failure})`, hint: 'Install it again.' });
  if (signal !== undefined)
    return new InputError({ what: `${name} was ended by the system or another program (${signal})` });
  return undefined;
}

/** All that a program writes. @throws InputError when it cannot be started or writes more than `mostBytes` */
export async function outputOf(
  program: string,
  args: readonly string[],
  mostBytes = 64_000_000,
): Promise<{ readonly code: number | undefined; readonly output: string; readonly complaints: string }> {
  const child = start(program, args);
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of child.stdout as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) {
      child.kill();
      throw new InputError({ what: `${program} does not come to an end`, hint: 'Is it the right file?' });
    }
    chunks.push(chunk);
  }
  const ended = await child.ended;
  const broken = brokenOff(program, ended);
  if (broken !== undefined) throw broken;
  return { code: ended.code, output: Buffer.concat(chunks).toString('utf8'), complaints: child.complaints() };
}
