import { type GateLight, measureGateLight } from '../../../capture/gate-light.js';
import { type CaptureFinding, isReady, readinessText } from '../../../capture/capture-finding.js';
import { gateLightFindings } from '../../../capture/gate-light-findings.js';
import { InputError } from '../../../errors/input-error.js';
import { writeSafely } from '../../../files/write-beside-then-rename.js';
import { primariesOf } from '../../../look/sections/signal.js';
import type { Picture } from '../../../picture/picture.js';
import type { LabelFonts } from '../../../preview/typeface.js';
import { cameraOf, type CameraOptions, loadStills, stillSignalOf } from '../../camera-options.js';
import { checkPicture, drawnFile } from '../../drawn-picture.js';
import { exitCodes } from '../../exit-codes.js';
import { printable, printJson, terminal } from '../../report.js';

export interface LightOptions extends CameraOptions {
  readonly whiteBalance?: number;
  readonly report?: string;
  readonly json: boolean;
  readonly force: boolean;
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
  const { report } = options;
  const writing = { force: options.force, sources: [path] };
  await checkPicture(report, writing);
  const camera = await cameraOf(options, [path]);
  const [still] = await loadStills([path], options);
  const signal = stillSignalOf(camera, options.ceiling);
  const light = measureGateLight(still.picture, {
    ...signal,
    primaries: primariesOf(camera.primaries),
    ...(options.whiteBalance === undefined ? {} : { balanceKelvin: options.whiteBalance }),
  });
  if (report !== undefined) {
    const { reportLight } = await import('../../../jobs/report-light.js');
    const draw = (fonts: LabelFonts) => reportLight(light, still, camera, signal, fonts);
    await writeSafely(report, await drawnFile(report, draw), writing);
  }
  const findings = gateLightFindings(light);
  const ready = isReady(findings);
  if (options.json) {
    // The map is for the report: a figure for each part of the field.
    const evenness = light.evenness === undefined ? undefined : { ...light.evenness, map: undefined };
    printJson({ still: path, report, ready, ...light, evenness, findings });
  } else {
    terminal.result(`${printable(path)}: looked at ${fieldWords(light, still.picture)}.`);
    for (const { verdict, sentence, hint } of findings) {
      terminal.result(`${marks[verdict]} ${sentence}`);
      if (hint !== undefined) terminal.result(`      ${hint}`);
    }
    terminal.result(readinessText('The light', findings));
    if (report !== undefined) terminal.result(`${printable(report)}: the same as a picture.`);
  }
  if (!ready) process.exitCode = exitCodes.notGood;
}
