import type { Wiring } from '../engine/refit/types.ts';

export function cellsOf(count: number): Wiring;
export function suppliedCells(count: number): Wiring;
