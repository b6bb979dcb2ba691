/** The numbers of a motion: typed in the circuit, else brought from the rest of the refit, else the usual, else not known. */
import { own } from '../../quantity/own.ts';
import { saySetting } from '../../quantity/read-setting.ts';
import type { SettingSpec } from '../../quantity/settings.ts';
import { ok, type Result } from '../../quantity/types.ts';
import { andList } from '../../quantity/words.ts';
import type { StopMotion } from '../../refit/types.ts';
import { MOTION_SETTINGS } from './motion.ts';
import { type Read, readSettings } from './settings.ts';

/** A number in SI from outside the circuit, with where it comes from in words; or what would have to be known for it. */
export type Offer = { readonly value: number; readonly from: string } | { readonly lacks: readonly string[] };

/** Offers for each motion, by setting. */
export type Offers = Readonly<Record<string, Readonly<Record<string, Offer>>>>;

export type Origin = 'typed' | 'refit' | 'usual' | 'unknown';

/** One setting of a motion, for showing. */
export interface NumberRow {
  readonly setting: string;
  readonly name: string;
  /** '6 m/min', 'yes'; empty while it is not known. */
  readonly says: string;
  readonly origin: Origin;
  /** What the rest of the refit says, where something is typed over it. */
  readonly over?: string;
  /** Where it comes from; while it is not known what to do: 'enter …, or type it into the stop circuit'. */
  readonly from: string;
}

export interface MotionNumbers {
  readonly read: Read;
  readonly rows: readonly NumberRow[];
}

const NONE: Readonly<Record<string, Offer>> = {};

export function motionNumbers(motion: StopMotion, where: string, offers: Offers = {}): Result<MotionNumbers> {
  const specs = MOTION_SETTINGS[motion.kind];
  const typed = readSettings(specs, motion.settings, where);
  if (!typed.ok) return typed;
  const brings = own(offers, motion.id) ?? NONE;
  const read: Record<string, number | undefined> = {};
  const rows: NumberRow[] = [];
  for (const [setting, spec] of Object.entries(specs)) {
    const offer = own(brings, setting);
    const isTyped = (own(motion.settings, setting) ?? '').trim() !== '';
    const brought =
      offer !== undefined && 'value' in offer && Number.isFinite(offer.value) ? offer : undefined;
    // What the refit asks about and cannot answer yet is not known, whatever is usual.
    const waits = !isTyped && offer !== undefined && 'lacks' in offer;
    const value = waits ? undefined : isTyped || brought === undefined ? typed.value[setting] : brought.value;
    read[setting] = value;
    const origin: Origin = isTyped ? 'typed' : brought ? 'refit' : value !== undefined ? 'usual' : 'unknown';
    rows.push({
      setting,
      name: spec.name,
      says: value === undefined ? '' : sayNumber(spec, value),
      origin,
      ...(isTyped && brought ? { over: sayNumber(spec, brought.value) } : {}),
      from: sayOrigin(spec, origin, offer),
    });
  }
  return ok({ read, rows });
}

function sayOrigin(spec: SettingSpec, origin: Origin, offer: Offer | undefined): string {
  const brought = offer !== undefined && 'value' in offer ? offer : undefined;
  switch (origin) {
    case 'typed':
      return brought
        ? `typed here; the rest of the refit says ${sayNumber(spec, brought.value)} (${brought.from})`
        : 'typed here';
    case 'refit':
      return brought!.from;
    case 'usual':
      return 'taken as usual';
    case 'unknown':
      return offer !== undefined && 'lacks' in offer && offer.lacks.length > 0
        ? `enter ${andList(offer.lacks)}, or type it into the stop circuit`
        : 'type it into the stop circuit';
  }
}

/** A choice is kept as its position. */
const sayNumber = (spec: SettingSpec, value: number): string =>
  saySetting(spec, spec.kind === 'choice' ? spec.options[value] : value);
