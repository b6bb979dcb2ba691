/** The lines of an incremental encoder: as it gives them, and as a drive or control reads them. */
import { type Draft, known } from '../kind.ts';
import { differentialInput, differentialOutput, levelOutput, logicInput } from './io.ts';

const CHANNELS = ['A', 'B', 'Z'] as const;
const SAY = { A: 'channel A', B: 'channel B', Z: 'index' } as const;

export interface EncoderFeed {
  readonly volts?: number;
  /** Least it works with; of an encoder only. */
  readonly least?: number;
  readonly most?: number;
  readonly amps?: number;
  readonly frequency?: number;
  /** Ohms across each pair inside the reader. */
  readonly termination?: number;
}

/** 'differential', 'single-ended' or 'open collector'; marks begin with `prefix`. */
export function encoderInputs(prefix: string, lines: string, feed: EncoderFeed): readonly Draft[] {
  const made: Draft[] = [];
  const group = `${prefix}encoder`;
  const zero = `${prefix}0V`;
  for (const channel of CHANNELS) {
    if (lines === 'differential') {
      for (const half of ['plus', 'minus'] as const)
        made.push({
          mark: `${prefix}${channel}${half === 'plus' ? '+' : '-'}`,
          name: `encoder, ${SAY[channel]}, ${half}`,
          nature: differentialInput(half, feed.termination, feed.frequency),
          with: `${prefix}${channel}${half === 'plus' ? '-' : '+'}`,
          common: zero,
          group,
          signal: `${channel}${half === 'plus' ? '+' : '-'}`,
        });
      continue;
    }
    made.push({
      mark: `${prefix}${channel}`,
      name: `encoder, ${SAY[channel]}`,
      nature: {
        ...logicInput('ttl-5v', feed.frequency),
        // Made for open collectors, it has its own resistor up to 5 V.
        ...(lines === 'open collector' ? { pull: { ohms: 1000, to: 5 } } : {}),
      },
      common: zero,
      group,
      signal: `${channel}+`,
    });
  }
  made.push(
    {
      mark: `${prefix}5V`,
      name: 'encoder, supply',
      nature: {
        kind: 'supply',
        pole: 'plus',
        regulated: true,
        ...known({ volts: feed.volts, amps: feed.amps }),
      },
      with: zero,
      common: zero,
      group,
      signal: 'supply',
    },
    {
      mark: zero,
      name: 'encoder, 0 V',
      nature: { kind: 'supply', pole: 'minus', ...known({ volts: feed.volts, amps: feed.amps }) },
      with: `${prefix}5V`,
      group,
      signal: 'zero',
    },
    {
      mark: `${prefix}SH`,
      name: 'encoder, shield',
      nature: { kind: 'shield', earthed: true },
      group,
      signal: 'shield',
    },
  );
  return made;
}

export function encoderOutputs(lines: string, feed: EncoderFeed): readonly Draft[] {
  const made: Draft[] = [];
  for (const channel of CHANNELS) {
    if (lines === 'differential') {
      for (const half of ['plus', 'minus'] as const)
        made.push({
          mark: `${channel}${half === 'plus' ? '+' : '-'}`,
          name: `${SAY[channel]}, ${half}`,
          nature: differentialOutput(half, feed.frequency),
          with: `${channel}${half === 'plus' ? '-' : '+'}`,
          common: '0V',
          group: 'lines',
          signal: `${channel}${half === 'plus' ? '+' : '-'}`,
          // Many do without the index.
          needed: channel !== 'Z',
        });
      continue;
    }
    const level = lines === 'open collector' ? 'open-collector' : lines === '24 V' ? '24v' : 'ttl-5v';
    const most = feed.most === undefined ? {} : { 'output-withstands': feed.most };
    made.push({
      mark: channel,
      name: SAY[channel],
      nature: levelOutput(level, { 'output-current': 0.02, ...most }, feed.volts, feed.frequency),
      common: '0V',
      group: 'lines',
      signal: `${channel}+`,
      needed: channel !== 'Z',
    });
  }
  const { volts, least, most, amps } = feed;
  const pole = (which: 'plus' | 'minus') => ({
    kind: 'feed' as const,
    pole: which,
    role: 'logic' as const,
    ...known({ volts, least, most, amps }),
  });
  made.push(
    {
      mark: '5V',
      name: 'supply',
      nature: pole('plus'),
      with: '0V',
      group: 'lines',
      signal: 'supply',
      needed: true,
    },
    {
      mark: '0V',
      name: '0 V',
      nature: pole('minus'),
      with: '5V',
      group: 'lines',
      signal: 'zero',
      needed: true,
    },
    {
      mark: 'SH',
      name: 'shield',
      nature: { kind: 'shield', earthed: false },
      group: 'lines',
      signal: 'shield',
    },
  );
  return made;
}
