/** Units as people write them, uncertainty, basis. */
export { isBasis, standardUncertainty, weakest } from './basis.ts';
export { describeDimension } from './describe.ts';
export {
  dimension,
  dimensionKey,
  divide,
  equal,
  multiply,
  PLAIN,
  plain,
  power,
  sameDimension,
} from './dimension.ts';
export { convert, formatNumber, formatQuantity, printQuantity, toSI } from './format.ts';
export type { LengthOf } from './length-words.ts';
export { addMoney, compareMoney, type Money, parseMoney, sayMoney } from './money.ts';
export { preferred, type UnitSystem } from './prefer.ts';
export { type Expected, parseQuantity } from './quantity.ts';
export { readable, unitToRead } from './readable.ts';
export * from './types.ts';
export { parseUnit, unitOf } from './unit.ts';
