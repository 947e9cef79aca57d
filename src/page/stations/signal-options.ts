import { primaries } from '../../colour/primaries/index.js';
import { transferFunctions } from '../../colour/transfer-functions/index.js';
import type { Option } from './station.js';

const titled = (registry: Readonly<Record<string, { title: string }>>): Option[] =>
  Object.entries(registry).map(([value, { title }]) => ({ label: title, value }));

const spelledOut = (label: string): Option => ({
  label,
  value: undefined,
  holds: (value) => typeof value === 'object' && value !== null,
});

export const encodings = titled(transferFunctions);
export const primariesOptions = titled(primaries);
export const ranges: Option[] = [
  { label: 'full', value: 'full' },
  { label: 'legal', value: 'legal' },
];

/** Stands in a list only where a look file has brought one in: it is shaped in the file. */
export const typedInCurve = spelledOut('log curve typed into the look file');
export const typedInPrimaries = spelledOut('primaries typed into the look file');

export const asCamera: Option = {
  label: 'as the camera',
  value: undefined,
  holds: (value) => value === undefined,
};
