/** What the page of moves is made of, without drawing. */
import type { AxisModel, Move, MoveKind, Run, RunEvent } from '../../../engine/simulate/index.ts';

export type { AxisModel, Move, MoveKind, Run, RunEvent };

/** Values of a model that were changed on the page, by path: 'slide.mass'. SI. */
export type Changes = Readonly<Record<string, number>>;

type Groups = Readonly<Record<string, Readonly<Record<string, unknown>> | null>>;

/** The value at a path, or undefined where the model has no such number. */
export function valueAt(model: AxisModel, path: string): number | undefined {
  const [group, name] = path.split('.') as [string, string];
  const value = (model as unknown as Groups)[group]?.[name];
  return typeof value === 'number' ? value : undefined;
}

/** The model with changed values; paths that this model does not have are left out. */
export function changed(model: AxisModel, changes: Changes): AxisModel {
  const out: Record<string, unknown> = { ...model };
  for (const [path, value] of Object.entries(changes)) {
    if (valueAt(model, path) === undefined) continue;
    const [group, name] = path.split('.') as [string, string];
    out[group] = { ...(out[group] as object), [name]: value };
  }
  return out as unknown as AxisModel;
}
