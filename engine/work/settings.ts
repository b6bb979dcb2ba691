/** Reads what was typed for a piece of work; what cannot be read becomes a finding that says what would be right. */

import { nearest } from '../quantity/nearest.ts';
import { capital } from '../quantity/words.ts';
import type { Work } from '../refit/types.ts';
import type { Basic, Thread } from '../threads/index.ts';
import { quantityOf, threadOf } from './asked.ts';
import { WORK_FIELDS, type WorkField, type WorkKind } from './fields.ts';
import { told, type WorkFinding } from './finding.ts';

const LONGEST = 80;

export class Settings {
  readonly findings: WorkFinding[] = [];
  private readonly work: Work;
  private readonly fields: readonly WorkField[];

  constructor(work: Work) {
    this.work = work;
    this.fields = WORK_FIELDS[work.kind as WorkKind];
    const known = this.fields.map(({ key }) => key);
    for (const key of Object.keys(work.settings)) {
      if (known.includes(key)) continue;
      const near = nearest(key.slice(0, LONGEST), known);
      this.refuse(
        key.slice(0, LONGEST),
        `A ${work.kind} has no “${key.slice(0, LONGEST)}”.${near ? ` Did you mean ${near}?` : ''} It takes ${known.join(', ')}.`,
      );
    }
  }

  /** As typed; undefined for an empty field. */
  text(key: string): string | undefined {
    const text = Object.hasOwn(this.work.settings, key) ? this.work.settings[key]!.trim() : '';
    return text === '' ? undefined : text;
  }

  refuse(key: string, message: string): void {
    const name = this.fields.find((each) => each.key === key)?.name ?? key;
    this.findings.push(
      told(this.work.id, {
        check: `setting-${key.replace(/[^a-z0-9-]/gi, '').slice(0, 30) || 'name'}`,
        link: 'settings',
        title: capital(name),
        verdict: 'fails',
        sentence: message,
      }),
    );
  }

  /** SI, above zero; undefined where nothing was typed or what was typed is refused. */
  quantity(key: string, unit: string, most = 1e9): number | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const name = this.fields.find((each) => each.key === key)?.name ?? key;
    if (text.length > LONGEST) {
      this.refuse(key, `${name}: that is too long to be a value.`);
      return undefined;
    }
    const read = quantityOf(text, unit);
    if (!read.ok) {
      this.refuse(key, `${name}: ${read.problem.message}`);
      return undefined;
    }
    if (!(read.value.value > 0 && read.value.value < most)) {
      this.refuse(key, `${name}: it must be above zero, and no more than a machine can have.`);
      return undefined;
    }
    return read.value.value;
  }

  /** An option, or the first one where nothing was typed. */
  option<T extends string>(key: string, options: readonly [T, ...T[]]): T {
    const text = this.text(key)?.toLowerCase();
    if (text === undefined) return options[0];
    const found = options.find((each) => each === text);
    if (!found) this.refuse(key, `${key}: there is ${options.join(', ')}, not “${text.slice(0, LONGEST)}”.`);
    return found ?? options[0];
  }

  count(key: string, most: number): number | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const value = Number(text);
    if (/^\d{1,4}$/.test(text) && value >= 1 && value <= most) return value;
    this.refuse(key, `${key}: it must be a whole number from 1 to ${most}.`);
    return undefined;
  }

  thread(): { readonly thread: Thread; readonly basic: Basic } | undefined {
    const text = this.text('thread');
    if (text === undefined) {
      this.refuse('thread', 'The thread is missing; write one such as M20x1.5 or 1/4-20 UNC.');
      return undefined;
    }
    const read = threadOf(text);
    if (!read.ok) {
      const { message, readings = [] } = read.problem;
      this.refuse(
        'thread',
        readings.length > 0 && read.problem.code === 'ambiguous'
          ? `${message} ${readings.join('; ')}.`
          : message,
      );
      return undefined;
    }
    return read;
  }

  /**
   * A spindle speed, also from a cutting speed on a diameter. `zero` where 0 was typed, which is answered in a finding of
   * its own.
   */
  speed(diameter: number): number | 'zero' | undefined {
    const text = this.text('speed');
    if (text === undefined) return undefined;
    if (text.length > LONGEST) {
      this.refuse('speed', 'speed: that is too long to be a value.');
      return undefined;
    }
    const turning = quantityOf(text, 'r/min');
    const cutting = turning.ok ? turning : quantityOf(text, 'm/min');
    if (!turning.ok && !cutting.ok) {
      this.refuse(
        'speed',
        `spindle speed: ${turning.problem.message} A cutting speed such as 60 m/min does as well.`,
      );
      return undefined;
    }
    const value = turning.ok ? turning.value.value : cutting.ok ? (2 * cutting.value.value) / diameter : 0;
    if (value === 0) return 'zero';
    if (!(value > 0 && value < 1e5)) {
      this.refuse('speed', 'spindle speed: it must be above zero, and no more than a spindle can have.');
      return undefined;
    }
    return value;
  }
}
