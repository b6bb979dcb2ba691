/** Reads what was typed for a piece of work; what cannot be read becomes a finding that says what would be right. */

import { nearest } from '../quantity/nearest.ts';
import { own } from '../quantity/own.ts';
import type { Setting } from '../quantity/settings.ts';
import { capital } from '../quantity/words.ts';
import type { Work } from '../refit/types.ts';
import type { Basic, Thread } from '../threads/index.ts';
import { quantityOf, settingOf, threadOf } from './asked.ts';
import { WORK_FIELDS, type WorkField, type WorkKind } from './fields.ts';
import { told, type WorkFinding } from './finding.ts';

const LONGEST = 80;

/** What is said of a field that such a piece of work has not. */
export function noSuchField(kind: string, typed: string): string {
  const known = WORK_FIELDS[kind as WorkKind].map(({ key }) => key);
  const near = nearest(typed, known);
  return `A ${kind} has no “${typed}”.${near ? ` Did you mean ${near}?` : ''} It takes ${known.join(', ')}.`;
}

export class Settings {
  readonly findings: WorkFinding[] = [];
  private readonly work: Work;
  private readonly fields: readonly WorkField[];

  constructor(work: Work) {
    this.work = work;
    this.fields = WORK_FIELDS[work.kind as WorkKind];
    for (const key of Object.keys(work.settings)) {
      const typed = key.slice(0, LONGEST);
      if (!this.fields.some((each) => each.key === key)) this.refuse(typed, noSuchField(work.kind, typed));
    }
  }

  /** As typed; undefined for an empty field. */
  text(key: string): string | undefined {
    const text = (own(this.work.settings, key) ?? '').trim();
    return text === '' ? undefined : text;
  }

  private field(key: string): WorkField | undefined {
    return this.fields.find((each) => each.key === key);
  }

  refuse(key: string, message: string): void {
    this.findings.push(
      told(this.work.id, {
        check: `setting-${key.replace(/[^a-z0-9-]/gi, '').slice(0, 30) || 'name'}`,
        link: 'settings',
        title: capital(this.field(key)?.name ?? key),
        verdict: 'fails',
        sentence: message,
      }),
    );
  }

  /** As its field says; undefined where nothing was typed or what was typed is refused. */
  private read(key: string): Setting {
    const text = this.text(key);
    const spec = this.field(key);
    if (text === undefined || spec === undefined) return undefined;
    const read = settingOf(spec, text);
    if (read.ok) return read.value;
    this.refuse(key, read.problem.message);
    return undefined;
  }

  /** A quantity in SI or a count; undefined where a word stands instead. */
  number(key: string): number | undefined {
    const value = this.read(key);
    return typeof value === 'number' ? value : undefined;
  }

  /** An option, or the usual one. */
  option(key: string): string {
    return String(this.read(key) ?? this.field(key)?.usual ?? '');
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
