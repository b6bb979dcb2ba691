/** What each function of the language means for plain numbers. The compiled program and the bounds agree with it. */
import type { FunctionName } from './expression.ts';

/** Rounds halves away from zero, as people do. */
export function roundHalfAway(x: number): number {
  const whole = Math.trunc(x);
  return Math.abs(x - whole) >= 0.5 ? whole + Math.sign(x) : whole;
}

export const APPLY: Readonly<Record<FunctionName, (a: number, b: number) => number>> = {
  sqrt: Math.sqrt,
  abs: Math.abs,
  min: Math.min,
  max: Math.max,
  exp: Math.exp,
  ln: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  atan2: Math.atan2,
  floor: Math.floor,
  ceil: Math.ceil,
  round: roundHalfAway,
  sign: Math.sign,
};
