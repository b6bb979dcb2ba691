/** Numbers outside what is plausible: a person is asked whether they are right. Far outside `ask-back.ts` holds them back. */
import { formatQuantity } from './format.ts';
import { parseQuantity } from './quantity.ts';

/** From the least to the largest that is usual, each as it would be typed. */
export type Span = readonly [low: string, high: string];

/** Why a number looks odd, as a question to the person; undefined where it lies within the span. */
export function askOutside(name: string, value: number, span: Span, unit: string): string | undefined {
  const [low, high] = span.map((text) => parseQuantity(text, unit));
  if (!low?.ok || !high?.ok) return undefined;
  if (value >= low.value.value && value <= high.value.value) return undefined;
  return `Is the ${name} really ${formatQuantity(value, unit)}? Usual is ${span[0]} to ${span[1]}.`;
}
