/** Numbers outside what is plausible: a little, and a person is asked; a thousand times, and a slip of the keyboard is likelier. */
import { formatQuantity } from './format.ts';
import { parseQuantity } from './quantity.ts';

/** Times beyond the plausible span; below that a person is only asked. A habit, no source. */
const FAR = 1000;

/** From the least to the largest that is usual, each as it would be typed. */
export type Span = readonly [low: string, high: string];

/** Whether a value in SI lies a thousand times above a span written as a person would. */
export function isFarAbove(value: number, span: Span, unit: string): boolean {
  const ends = span.map((each) => parseQuantity(each, unit));
  const sizes = ends.map((each) => (each.ok ? Math.abs(each.value.value) : Number.NaN));
  return Math.abs(value) > FAR * Math.max(...sizes);
}

/** Whether it lies a thousand times outside, above or below; nought is never too small. */
export function isFarOut(value: number, span: Span, unit: string): boolean {
  if (isFarAbove(value, span, unit)) return true;
  const least = parseQuantity(span[0], unit);
  return least.ok && value !== 0 && Math.abs(value) < least.value.value / FAR;
}

/** What is wrong with it and what would be plausible, without a full stop. */
export const sayFarOut = (name: string, value: number, span: Span, unit: string): string =>
  `${formatQuantity(value, unit)} is more than a thousand times outside what is plausible for the ${name}: ${span[0]} to ${span[1]}. Look for a slip in the number or its unit`;

/** Why a number looks odd, as a question to the person; undefined where it lies within the span. */
export function askOutside(name: string, value: number, span: Span, unit: string): string | undefined {
  const [low, high] = span.map((text) => parseQuantity(text, unit));
  if (!low?.ok || !high?.ok) return undefined;
  if (value >= low.value.value && value <= high.value.value) return undefined;
  return `Is the ${name} really ${formatQuantity(value, unit)}? Usual is ${span[0]} to ${span[1]}.`;
}
