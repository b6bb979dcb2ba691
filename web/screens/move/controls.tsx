/** What may be changed: sliders for what matters most, and every other number of the model. */

import { useState } from 'react';
import { formatQuantity, parseQuantity } from '../../../engine/quantity/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { GROUPS, type NumberParameter } from '../../../engine/simulate/index.ts';
import { type AxisModel, type Changes, valueAt } from './parts.ts';

interface Slider {
  readonly path: string;
  readonly name: string;
  /** From this share of the model's own value to this; `to` alone where it begins at zero. */
  readonly from: number;
  readonly to: number;
  /** For what may be zero: the greatest value, SI. */
  readonly most?: number;
  readonly unit: string;
}

const SLIDERS: readonly Slider[] = [
  { path: 'control.positionGain', name: 'position gain', from: 0.1, to: 20, unit: '1/s' },
  { path: 'control.speedGain', name: 'speed gain', from: 0.1, to: 50, unit: 'A·s/rad' },
  { path: 'control.proportional', name: 'proportional gain', from: 0.1, to: 50, unit: 'V/rad' },
  { path: 'control.derivative', name: 'derivative gain', from: 0.1, to: 50, unit: 'V·s/rad' },
  { path: 'transmission.ratio', name: 'motor turns for one of the screw', from: 0.25, to: 4, unit: '1' },
  { path: 'slide.mass', name: 'moving mass', from: 0.3, to: 3, unit: 'kg' },
  { path: 'transmission.backlash', name: 'free play', from: 0, to: 1, most: 3e-4, unit: 'mm' },
  { path: 'transmission.stiffness', name: 'stiffness', from: 0.05, to: 5, unit: 'N/µm' },
  { path: 'supply.mains', name: 'mains, share of nominal', from: 0.8, to: 1.15, unit: '1' },
  { path: 'supply.voltage', name: 'supply voltage', from: 0.6, to: 1.5, unit: 'V' },
];

/** A single loop that sets a current has its gains in amperes. */
const slidersOf = ({ control }: AxisModel): readonly Slider[] =>
  control.kind === 'pid' && control.output === 'current'
    ? SLIDERS.map((each) => ({ ...each, unit: each.unit.replace(/^V(?=[/·].*rad$)/, 'A') }))
    : SLIDERS;

const STEPS = 200;

interface Props {
  readonly base: AxisModel;
  readonly changes: Changes;
  readonly onChange: (changes: Changes) => void;
}

export function Controls({ base, changes, onChange }: Props) {
  const set = (path: string, value: number): void => onChange({ ...changes, [path]: value });
  const drop = (path: string): void => {
    const { [path]: _gone, ...rest } = changes;
    onChange(rest);
  };
  const there = slidersOf(base).filter(({ path, most }) => {
    const value = valueAt(base, path);
    return value !== undefined && Number.isFinite(value) && (value > 0 || most !== undefined);
  });
  return (
    <div className="stack">
      <div className="sliders">
        {there.map((slider) => (
          <SliderField
            key={slider.path}
            slider={slider}
            own={valueAt(base, slider.path)!}
            value={changes[slider.path]}
            onChange={(value) => set(slider.path, value)}
            onDrop={() => drop(slider.path)}
          />
        ))}
      </div>
      <details>
        <summary>Every number of the model</summary>
        {Object.entries(GROUPS).map(([group, { says, kinds }]) => {
          const now = (base as unknown as Record<string, { kind?: string } | null>)[group];
          const parameters = now && (kinds[now.kind ?? ''] ?? kinds['']);
          if (!parameters) return null;
          const numbers = Object.entries(parameters).filter(
            (each): each is [string, NumberParameter] => each[1].kind === 'number',
          );
          return (
            <fieldset key={group}>
              <legend>{says}</legend>
              {numbers.map(([name, parameter]) => {
                const path = `${group}.${name}`;
                const own = valueAt(base, path);
                return own === undefined ? null : (
                  <NumberField
                    key={path}
                    path={path}
                    parameter={parameter}
                    own={own}
                    value={changes[path]}
                    onChange={(value) => set(path, value)}
                    onDrop={() => drop(path)}
                  />
                );
              })}
            </fieldset>
          );
        })}
      </details>
    </div>
  );
}

interface SliderProps {
  readonly slider: Slider;
  readonly own: number;
  readonly value: number | undefined;
  readonly onChange: (value: number) => void;
  readonly onDrop: () => void;
}

function SliderField({ slider, own, value, onChange, onDrop }: SliderProps) {
  const { path, name, from, to, most, unit } = slider;
  const now = value ?? own;
  const place =
    most === undefined ? Math.log(now / own / from) / Math.log(to / from) : now / Math.max(most, own);
  const at = (step: number): number => {
    const share = step / STEPS;
    if (most !== undefined) return share * Math.max(most, own);
    // The model's own value is met exactly, not nearly.
    const one = Math.round((STEPS * Math.log(1 / from)) / Math.log(to / from));
    return step === one ? own : own * from * (to / from) ** share;
  };
  const text = formatQuantity(now, unit, { digits: 3 });
  return (
    <div className="slider">
      <label htmlFor={path}>
        {capital(name)} <output htmlFor={path}>{text}</output>
      </label>
      <input
        id={path}
        type="range"
        min={0}
        max={STEPS}
        step={1}
        value={Math.round(Math.min(1, Math.max(0, place)) * STEPS)}
        aria-valuetext={text}
        onChange={(event) => onChange(at(Number(event.target.value)))}
      />
      {value !== undefined && (
        <button type="button" className="plain small" onClick={onDrop}>
          Back to {formatQuantity(own, unit, { digits: 3 })}
        </button>
      )}
    </div>
  );
}

interface NumberProps {
  readonly path: string;
  readonly parameter: NumberParameter;
  readonly own: number;
  readonly value: number | undefined;
  readonly onChange: (value: number) => void;
  readonly onDrop: () => void;
}

function NumberField({ path, parameter, own, value, onChange, onDrop }: NumberProps) {
  const { name, unit, none } = parameter;
  const say = (number: number): string =>
    Number.isFinite(number) ? formatQuantity(number, unit, { digits: 6 }) : (none ?? 'none');
  const [text, setText] = useState<string>();
  const [fault, setFault] = useState('');
  const shown = text ?? say(value ?? own);
  const commit = (): void => {
    if (text === undefined) return;
    if (text.trim() === '' || text === say(own)) {
      setFault('');
      setText(undefined);
      onDrop();
      return;
    }
    if (none !== undefined && text.trim() === none) {
      setFault('');
      setText(undefined);
      onChange(Number.POSITIVE_INFINITY);
      return;
    }
    const read = parseQuantity(text, unit);
    if (!read.ok) {
      setFault(read.problem.message);
      return;
    }
    setFault('');
    setText(undefined);
    onChange(read.value.value);
  };
  return (
    <div className="field number-field">
      <label htmlFor={`all-${path}`}>{capital(name)}</label>
      <input
        id={`all-${path}`}
        value={shown}
        aria-invalid={fault !== ''}
        aria-describedby={`all-${path}-said`}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => event.key === 'Enter' && commit()}
      />
      <p id={`all-${path}-said`} className="said" aria-live="polite">
        {fault && <span className="bad">{fault}</span>}
        {!fault && value !== undefined && <span className="soft">changed; its own value is {say(own)}</span>}
      </p>
    </div>
  );
}
