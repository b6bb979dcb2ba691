import type { AxisModel, Move } from '../engine/simulate/index.ts';
export const r: number;
export const MODEL: AxisModel;
export const MOVE: Extract<Move, { kind: 'rapid' }>;
export function numbers(model: AxisModel, move: Move): Record<string, number>;
