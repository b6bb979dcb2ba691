/** Findings of the supply in the words of a person, in the form of those of the wiring. */
import { formatQuantity, readable } from '../../quantity/index.ts';
import type { Figure, Root, Verdict, WiringFinding } from '../wiring/types.ts';

/** Margin below which a verdict is tight: a tenth in hand, common practice, no source. */
export const TIGHT = 1.1;

/** Below one ampere in milliamperes, as meters and plates have it. */
export const amps = (value: number): string =>
  value < 1 ? formatQuantity(value, 'mA', { digits: 3 }) : readable(value, 'A');
export const volts = (value: number): string => readable(value, 'V');
/** m² in mm². */
export const area = (value: number): string => formatQuantity(value, 'mm²', { digits: 3 });
export const metres = (value: number): string => readable(value, 'm');
export const percent = (value: number): string => formatQuantity(value, '%', { digits: 2 });

export const figure = (name: string, value: number, unit: string): Figure => ({ name, value, unit });

export const byMargin = (margin: number, tight = TIGHT): Verdict =>
  margin < 1 ? 'fails' : margin < tight ? 'tight' : 'fits';

export function finding(
  rule: string,
  about: readonly string[],
  title: string,
  verdict: Verdict,
  sentence: string,
  source: string,
  more: {
    readonly margin?: number | undefined;
    readonly figures?: readonly Figure[];
    readonly remedy?: string | undefined;
    readonly needs?: readonly string[] | undefined;
    readonly root?: Root;
  } = {},
): WiringFinding {
  const { margin, figures = [], remedy, needs, root } = more;
  return {
    id: `${rule}:${about[0] ?? ''}`,
    rule,
    about,
    title,
    verdict,
    sentence,
    figures,
    source,
    ...(margin !== undefined && Number.isFinite(margin) ? { margin } : {}),
    ...(remedy === undefined ? {} : { remedy }),
    ...(needs && needs.length > 0 ? { needs: [...new Set(needs)] } : {}),
    ...(root ? { root } : {}),
  };
}
