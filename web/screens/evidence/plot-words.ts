/** The picture of the readings in words. */
import { formatNumber, formatQuantity, toSI } from '../../../engine/quantity/index.ts';
import type { Plot } from './plot-data.ts';

export const unitOf = (name: string, unit: string): string => (unit === '1' ? name : `${name} in ${unit}`);

/** '51.5 ± 1.8 mm': no more digits than the band leaves. */
function sayMean(mean: number, half: number, unit: string): string {
  const zero = toSI(0, unit);
  return formatQuantity(toSI(mean, unit), unit, { half: toSI(half, unit) - zero });
}

export function sayPlot({ kind, y, series, line }: Plot, odd: ReadonlySet<number>): string {
  const unit = y.unit === '1' ? '' : ` ${y.unit}`;
  const asked = odd.size > 0 ? ' A ring marks a reading that is questioned.' : '';
  const aside = series.some(({ points }) => points.some((each) => each.isAside))
    ? ' A cross marks a reading that was set aside and does not count.'
    : '';
  if (kind === 'line' && line)
    return `The line is the best straight line; below it stands how far each reading lies off it, typically ${formatNumber(line.deviation, 2)}${unit}.${asked}${aside}`;
  const means = series.flatMap(({ name, mean, half }) =>
    mean === undefined || half === undefined
      ? []
      : [`${series.length > 1 ? `${name}: ` : ''}mean ${sayMean(mean, half, y.unit)}`],
  );
  if (means.length === 0) return `A dot for each reading.${asked}${aside}`;
  const which = means.length <= 2 ? `: ${means.join('; ')}, which is` : ' show the mean of each kind and';
  return `A dot for each reading. Line and band${which} where the mean lies 95 times in a hundred by the scatter alone.${asked}${aside}`;
}
