/** Inputs and outputs by their level, as several kinds have them. */
import { LOGIC_FAMILIES, logicFamily, RS422 } from '../../../tables/logic-levels.ts';
import { known, numberOf, textOf } from '../kind.ts';
import { amount, choice, type SettingSpecs, type Settings } from '../setting.ts';
import type { Input, Output } from '../types.ts';

export const OUTPUT_LEVELS = [
  'logic-3v3',
  'ttl-5v',
  'hct-5v',
  'open-collector',
  'differential',
  '24v',
] as const;
export const INPUT_LEVELS = ['ttl-5v', 'logic-3v3', 'opto-5v', 'opto-24v', 'differential'] as const;

/** What a 24 V output leaves of its supply at rated current: IEC 61131-2, from memory. */
const DROP = 3;

/** Settings of command inputs that are opto-couplers; the current at which one is surely on is common practice. */
export const OPTO_SETTINGS: SettingSpecs = {
  'input-series': amount('resistor inside each opto input', 'Ω'),
  'input-forward': amount('voltage of the LED in each opto input', 'V', '1.2 V'),
  'input-on-current': amount('current at which an opto input surely switches on', 'A', '5 mA'),
  'input-off-current': amount('current at which an opto input is surely off', 'A', '0.2 mA'),
  'input-most-current': amount('most current an opto input stands', 'A', '20 mA'),
};

/** The resistor such inputs usually have inside, by what they are made for; common practice, no source. */
const USUAL_SERIES = { 5: 330, 24: 2200 } as const;

export function optoInput(
  settings: Settings,
  rated: 5 | 24,
  leg: 'plus' | 'minus',
  frequency?: number,
): Input {
  const series = numberOf(settings, 'input-series') ?? USUAL_SERIES[rated];
  const forward = numberOf(settings, 'input-forward')!;
  const on = numberOf(settings, 'input-on-current')!;
  const off = numberOf(settings, 'input-off-current')!;
  return {
    kind: 'input',
    form: 'opto',
    leg,
    rated,
    current: (rated - forward) / series,
    onCurrent: on,
    offCurrent: off,
    on: forward + series * on,
    off: forward + series * off,
    most: forward + series * numberOf(settings, 'input-most-current')!,
    forward,
    series,
    ...known({ frequency }),
  };
}

export function logicInput(level: 'ttl-5v' | 'logic-3v3', frequency?: number): Input {
  const { inputLow, inputHigh, supply } = logicFamily(level);
  const rated = supply as number;
  // A logic input stands a little more than its own supply, and no more.
  return {
    kind: 'input',
    form: 'logic',
    leg: 'only',
    on: inputHigh,
    off: inputLow,
    rated,
    most: rated * 1.1,
    ...known({ frequency }),
  };
}

export const PLC_TYPES = ['type 1', 'type 2', 'type 3'] as const;

/** Current up to which it surely reads off, by type, in A: IEC 61131-2, from memory. */
const OFF_CURRENT = [0.0005, 0.002, 0.0015] as const;

/** A 24 V input of IEC 61131-2. */
export function plcInput(
  form: 'opto' | 'sinking' | 'sourcing',
  type: string,
  current: number | undefined,
): Input {
  const at = Math.max(0, PLC_TYPES.indexOf(type as (typeof PLC_TYPES)[number])) + 1;
  const family = LOGIC_FAMILIES.find(({ id }) => id === `plc-type-${at}`)! as (typeof LOGIC_FAMILIES)[5];
  return {
    kind: 'input',
    form,
    leg: 'only',
    on: family.inputHigh,
    off: family.inputLow,
    onCurrent: family.inputCurrent[0],
    offCurrent: OFF_CURRENT[at - 1]!,
    rated: 24,
    // 24 V plus 25 %, the most such a supply may reach.
    most: 30,
    ...known({ current }),
  };
}

/** An output of a logic or 24 V level; differential ones are a kind of their own. */
export function levelOutput(
  level: string,
  settings: Settings,
  volts: number | undefined,
  frequency?: number,
): Output {
  const gives = numberOf(settings, 'output-current');
  const shared = known({ frequency, gives, swallows: gives });
  switch (level) {
    case 'open-collector':
      return {
        kind: 'output',
        stage: 'sinking',
        low: numberOf(settings, 'output-low') ?? 0.4,
        leaks: 0.0001,
        ...known({ swallows: gives, withstands: numberOf(settings, 'output-withstands'), frequency }),
      };
    case '24v':
      return {
        kind: 'output',
        stage: 'sourcing',
        leaks: 0.0005,
        ...known({
          gives,
          frequency,
          high: volts === undefined ? undefined : volts - DROP,
          top: volts,
        }),
      };
    case 'ttl-5v':
    case 'logic-3v3':
    case 'hct-5v': {
      const family = logicFamily(level);
      return {
        kind: 'output',
        stage: 'push-pull',
        high: family.outputHigh!,
        low: family.outputLow!,
        top: family.supply as number,
        ...shared,
      };
    }
    default:
      return { kind: 'output', stage: 'push-pull', ...shared };
  }
}

export const differentialOutput = (half: 'plus' | 'minus', frequency?: number) => ({
  kind: 'differential-output' as const,
  half,
  least: RS422.driverLeast,
  // A driver of that standard runs from 5 V; each wire alone is at least TTL.
  high: 2.4,
  low: 0.5,
  top: 5,
  ...known({ frequency }),
});

export const differentialInput = (
  half: 'plus' | 'minus',
  termination: number | undefined,
  frequency?: number,
) => ({
  kind: 'differential-input' as const,
  half,
  threshold: RS422.receiverThreshold,
  commonMode: RS422.commonMode,
  most: 14,
  ...known({ termination, frequency }),
});

export const yes = (settings: Settings, name: string): boolean => textOf(settings, name) === 'yes';
export const YES_NO = ['yes', 'no'] as const;
export const yesNo = (name: string, usual: 'yes' | 'no' = 'no') => choice(name, YES_NO, usual);
