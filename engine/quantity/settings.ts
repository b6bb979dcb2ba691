/**
 * What can be set of a thing, as a person types it: one shape for every table of settings. `read-setting.ts` reads what was
 * typed against it, and says a value back.
 */

import type { Span } from './plausible.ts';

interface Asked {
  /** What it is, as it stands beside its field. */
  readonly name: string;
  /** As it would be typed; taken where nothing is typed. '' where it is then not known. */
  readonly usual: string;
  /** What it is or how to find it out, where the name does not say it. */
  readonly help?: string;
}

/** A number with a unit; inside SI. */
export interface QuantitySetting extends Asked {
  readonly kind: 'quantity';
  /** It is read and said back in. */
  readonly unit: string;
  /** Least value, SI; below zero only where said. */
  readonly least: number;
  /** It must be above the least. */
  readonly above?: boolean;
  /** Largest value, SI; without it whatever a machine can have. */
  readonly most?: number;
  /** What such things have as a rule; far outside it a person is asked whether it is right. */
  readonly plausible?: Span;
  /** Words that may be typed instead; they are read as the first of them. */
  readonly instead?: readonly [string, ...string[]];
}

export interface CountSetting extends Asked {
  readonly kind: 'count';
  readonly least: number;
  readonly most: number;
}

/** One of some answers. */
export interface ChoiceSetting extends Asked {
  readonly kind: 'choice';
  readonly options: readonly string[];
  /** Each in words, where an option does not say itself; either may be typed. */
  readonly words?: Readonly<Record<string, string>>;
}

export interface TextSetting extends Asked {
  readonly kind: 'text';
  /** Characters; 200 where not said. */
  readonly most?: number;
  /** What such a text looks like. */
  readonly like?: string;
}

export type SettingSpec = QuantitySetting | CountSetting | ChoiceSetting | TextSetting;
export type SettingSpecs = Readonly<Record<string, SettingSpec>>;

/** Numbers in SI, choices and texts as text; undefined is not known. */
export type Setting = number | string | undefined;
export type Settings = Readonly<Record<string, Setting>>;

/** A quantity above zero. */
export const amount = (name: string, unit: string, usual = '', most?: number): QuantitySetting => ({
  kind: 'quantity',
  name,
  unit,
  usual,
  least: 0,
  above: true,
  ...(most === undefined ? {} : { most }),
});

/** A quantity that may be zero, or, with `least`, less. */
export const level = (name: string, unit: string, usual = '', least = 0, most?: number): QuantitySetting => ({
  kind: 'quantity',
  name,
  unit,
  usual,
  least,
  ...(most === undefined ? {} : { most }),
});

/** The same quantity with what is usual of it, from the least to the largest. */
export const mostly = (of: QuantitySetting, low: string, high: string): QuantitySetting => ({
  ...of,
  plausible: [low, high],
});

export const count = (name: string, usual: string, most: number, least = 0): CountSetting => ({
  kind: 'count',
  name,
  usual,
  least,
  most,
});

/** One of some words; without `usual` it is not known until somebody says. */
export const choice = (name: string, options: readonly string[], usual = ''): ChoiceSetting => ({
  kind: 'choice',
  name,
  usual,
  options,
});

/** One of some words, each with what it means; the first is usual. */
export const choiceOf = (
  name: string,
  words: Readonly<Record<string, string>>,
  help?: string,
): ChoiceSetting => ({
  ...choice(name, Object.keys(words), Object.keys(words)[0]),
  words,
  ...(help === undefined ? {} : { help }),
});

export const text = (name: string, usual = '', most?: number): TextSetting => ({
  kind: 'text',
  name,
  usual,
  ...(most === undefined ? {} : { most }),
});

/** An option as a person reads it. */
export const wordsOf = ({ words }: ChoiceSetting, option: string): string =>
  words !== undefined && Object.hasOwn(words, option) ? words[option]! : option;
