import type { Command } from 'commander';

/** Adds a command, its options, help and action. */
type AddCommand = (program: Command) => void;

/** Every command by its name, in the order of the help. Loaded when asked for: the others' modules take longest at start. */
const commands = {
  build: async () => (await import('./build.js')).addBuild,
  check: async () => (await import('./check.js')).addCheck,
  preview: async () => (await import('./preview.js')).addPreview,
  apply: async () => (await import('./apply.js')).addApply,
  verify: async () => (await import('./verify.js')).addVerify,
  undo: async () => (await import('./undo.js')).addUndo,
  measure: async () => (await import('./measure.js')).addMeasure,
  capture: async () => (await import('./capture.js')).addCapture,
  log: async () => (await import('./log.js')).addLog,
  demo: async () => (await import('./demo.js')).addDemo,
  page: async () => (await import('./page.js')).addPage,
  completion: async () => (await import('./completion.js')).addCompletion,
} satisfies Record<string, () => Promise<AddCommand>>;

/**
 * The commands that a command line needs: the one that it names, none for the version, all of them for help and for what
 * is no command.
 * @param first the first word of the command line
 */
export async function commandsFor(first: string | undefined): Promise<AddCommand[]> {
  if (first === '--version' || first === '-V') return [];
  const named = Object.entries(commands).filter(([name]) => name === first);
  const needed = named.length > 0 ? named.map(([, load]) => load) : Object.values(commands);
  return Promise.all(needed.map((load) => load()));
}
