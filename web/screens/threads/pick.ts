/** Threads to pick from, by family, as they are written. */
import { METRIC_SIZES } from '../../../engine/tables/thread-metric.ts';
import { NPT_SIZES } from '../../../engine/tables/thread-npt.ts';
import { PIPE_SIZES } from '../../../engine/tables/thread-pipe.ts';
import { TRAPEZOIDAL_SIZES } from '../../../engine/tables/thread-trapezoidal.ts';
import { UNIFIED_SIZES } from '../../../engine/tables/thread-unified.ts';
import { WHITWORTH_SIZES } from '../../../engine/tables/thread-whitworth.ts';

export const PICKS: readonly (readonly [family: string, names: readonly string[]])[] = [
  ['Metric, coarse', METRIC_SIZES.flatMap(({ d, coarse }) => (coarse === undefined ? [] : [`M${d}`]))],
  [
    'Metric, fine',
    METRIC_SIZES.filter(({ d }) => d <= 64).flatMap(({ d, fine }) => fine.map((P) => `M${d}x${P}`)),
  ],
  ['UNC', UNIFIED_SIZES.flatMap(({ size, unc }) => (unc === undefined ? [] : [`${size}-${unc} UNC`]))],
  ['UNF', UNIFIED_SIZES.flatMap(({ size, unf }) => (unf === undefined ? [] : [`${size}-${unf} UNF`]))],
  ['BSW', WHITWORTH_SIZES.flatMap(({ size, bsw }) => (bsw === undefined ? [] : [`${size}-${bsw} BSW`]))],
  ['BSF', WHITWORTH_SIZES.flatMap(({ size, bsf }) => (bsf === undefined ? [] : [`${size}-${bsf} BSF`]))],
  ['Pipe, parallel (G)', PIPE_SIZES.map(({ size }) => `G ${size}`)],
  ['Pipe, taper (R)', PIPE_SIZES.flatMap(({ size, taper }) => (taper ? [`R ${size}`] : []))],
  ['NPT', NPT_SIZES.map(({ size, tpi }) => `${size}-${tpi} NPT`)],
  ['Trapezoidal', TRAPEZOIDAL_SIZES.map(({ d, pitches }) => `Tr ${d}x${pitches[0]}`)],
];
