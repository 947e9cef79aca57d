import { marksOf } from '../state/sheet.js';
import { type Hand, newestOnly } from '../worker/crew.js';
import { problemWords, type Workings } from './workings.js';

/** Has the reel measured. @returns looks at whether stills, marks or camera are others than those that were measured */
export function createMeasuring({ store, findings, changed }: Workings, measurer: Hand): () => void {
  let measured = '';

  const measureReel = newestOnly(async () => {
    const sheet = store.sheet();
    const card = store.card();
    if (card.kind !== 'look' || sheet.stills.length === 0) return;
    findings.measuring = true;
    changed();
    const stills = sheet.stills.map(({ id, name }) => ({ id, name }));
    const { openGate, flare, ...camera } = card.look.camera;
    const look = { ...card.look, camera, stock: undefined };
    const found = measurer.call('measure', { stills, marks: marksOf(sheet), dyes: 'auto', look });
    await found.then(
      (measurement) => Object.assign(findings, { measurement, measureProblem: undefined }),
      (error: unknown) =>
        Object.assign(findings, { measurement: undefined, measureProblem: problemWords(error) }),
    );
    findings.measuring = false;
    changed();
  });

  return () => {
    const sheet = store.sheet();
    const card = store.card();
    if (card.kind !== 'look') return;
    const { encoding, primaries, range } = card.look.camera;
    const key = JSON.stringify([sheet.stills.map(({ id }) => id), sheet.marks, encoding, primaries, range]);
    if (key === measured) return;
    measured = key;
    if (sheet.stills.length > 0) measureReel(undefined);
    else findings.measurement = findings.measureProblem = undefined;
  };
}
