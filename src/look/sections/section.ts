// Looks: the look file and what it compiles to. Knows every part of the light path; knows nothing of tables, disks, screens.
import type { Run } from '../../maths/matrix3.js';
import { z } from 'zod';

/** A number field: limits, default, what it means and its unit. */
export const numberField = (min: number, max: number, initial: number, description: string) =>
  z.number().min(min).max(max).default(initial).meta({ description });

/** A field that takes one of some names. */
export const nameField = <Name extends string>(names: readonly Name[], description: string) =>
  z.enum(names as unknown as [Name, ...Name[]]).meta({ description });

/** Names of a registry, as a schema wants them. */
export const namesOf = <T extends object>(registry: T) => Object.keys(registry) as Extract<keyof T, string>[];

/** Three numbers by the colour of light. */
export const redGreenBlue = (min: number, max: number, description: string) =>
  z
    .strictObject({
      red: numberField(min, max, 0, `${description}, red`),
      green: numberField(min, max, 0, `${description}, green`),
      blue: numberField(min, max, 0, `${description}, blue`),
    })
    .prefault({})
    .meta({ description });

/** Runs one after the other. */
export const inTurn =
  (steps: readonly Run[]): Run =>
  (values, count) => {
    for (const step of steps) step(values, count);
  };
