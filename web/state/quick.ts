/**
 * The engine beside the hand. A keystroke's verdicts are worked out in the page itself, a few milliseconds, so that they
 * stand on the screen in the frame of the keystroke: on the way to the worker and back a frame would be painted first.
 * The worker follows, and does all that takes longer.
 */
import { type Assessment, assess, type Finding } from '../../engine/assess/index.ts';
import { setPath } from '../../engine/assess/set-policy.ts';
import type { Basis, UnitSystem } from '../../engine/quantity/index.ts';
import { applyEdit } from '../../engine/refit/edit.ts';
import type { Refit } from '../../engine/refit/types.ts';
import type { Reading, Snapshot } from '../worker/protocol.ts';
import { readingOf } from '../worker/reading.ts';
import { snapshot } from '../worker/snapshot.ts';

export class Quick {
  #base: Assessment | undefined;
  #system: UnitSystem = 'mm';
  #own: ReadonlySet<Finding> = new Set();

  /** Takes over what is recorded. */
  take(refit: Refit, system: UnitSystem): void {
    if (this.#base?.refit === refit && this.#system === system) return;
    const previous = this.#system === system ? this.#base : undefined;
    this.#system = system;
    this.#base = assess(refit, { previous, system });
    this.#own = new Set(this.#base.findings);
  }

  isFor(refit: Refit): boolean {
    return this.#base?.refit === refit;
  }

  /** What a text would do to what is recorded; findings it leaves alone are those that are shown already. */
  draft(
    recorded: Snapshot,
    ask: { readonly path: string; readonly text: string; readonly basis?: Basis },
  ): { readonly reading: Reading; readonly snapshot: Snapshot } {
    const base = this.#base!;
    const reading = readingOf(
      ask,
      setPath(base.refit, ask.path, ask.text, ask.basis ? { basis: ask.basis } : {}),
    );
    const applied = applyEdit(base.refit, { changes: reading.changes });
    if (!applied.ok || reading.changes.length === 0) return { reading, snapshot: recorded };
    const after = assess(applied.value, { previous: base });
    const shown = new Map(recorded.findings.map((finding) => [finding.id, finding]));
    const findings = after.findings.map((finding) =>
      this.#own.has(finding) ? (shown.get(finding.id) ?? finding) : finding,
    );
    return { reading, snapshot: { ...snapshot(after, [], findings), next: recorded.next } };
  }
}
