import { type GateLight, measureGateLight } from '../../../capture/gate-light.js';
import { type CaptureFinding, isReady } from '../../../capture/capture-finding.js';
import { gateLightFindings } from '../../../capture/gate-light-findings.js';
import { InputError } from '../../../errors/input-error.js';
import { primariesOf } from '../../../look/sections/signal.js';
import type { Picture } from '../../../picture/picture.js';
import { cameraOf, type CameraOptions, loadStills, stillSignalOf } from '../../camera-options.js';
import { exitCodes } from '../../exit-codes.js';
import { printable, printJson, terminal } from '../../report.js';

export interface LightOptions extends CameraOptions {
  readonly whiteBalance?: number;
  readonly json: boolean;
}

const marks = { good: 'good ', note: 'note ', fault: 'FAULT' } as const satisfies Record<
  CaptureFinding['verdict'],
  string
>;

/** What part of the still was looked at, where it is not all of it. */
function fieldWords({ field: { x, y, width, height } }: GateLight, picture: Picture): string {
  if (width === picture.width && height === picture.height) return 'the whole still';
  return `the gate's opening, ${width} x ${height} pixels from ${x}, ${y}`;
}

/** `gatelight measure --light`: reads a still of the open gate. */
export async function measureLight(
  path: string,
  others: readonly string[],
  options: LightOptions,
): Promise<void> {
  if (others.length > 0)
    throw new InputError({
      field: '--light',
      what: 'takes one still, of the open gate, and measures no reel beside it',
      hint: `Leave out ${others[0]}, or measure it in a run of its own.`,
    });
  const camera = await cameraOf(options);
  const [{ picture }] = await loadStills([path], options);
  const light = measureGateLight(picture, {
    ...stillSignalOf(camera, options.ceiling),
    primaries: primariesOf(camera.primaries),
    ...(options.whiteBalance === undefined ? {} : { balanceKelvin: options.whiteBalance }),
  });
  const findings = gateLightFindings(light);
  const ready = isReady(findings);
  if (options.json) printJson({ still: path, ready, ...light, findings });
  else {
    terminal.result(`${printable(path)}: looked at ${fieldWords(light, picture)}.`);
    for (const { verdict, sentence, hint } of findings) {
      terminal.result(`${marks[verdict]} ${sentence}`);
      if (hint !== undefined) terminal.result(`      ${hint}`);
    }
    terminal.result(
      !ready
        ? 'The light is NOT READY: put right what is marked FAULT.'
        : findings.every(({ verdict }) => verdict === 'good')
          ? 'The light is ready.'
          : 'The light is ready, if you can live with what is marked note.',
    );
  }
  if (!ready) process.exitCode = exitCodes.notGood;
}
