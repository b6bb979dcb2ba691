/** One open refit: what is recorded, what is shown, what is being tried. Edits count once the server has them on disk. */
import { useSyncExternalStore } from 'react';
import type { Remedy, Why } from '../../engine/assess/index.ts';
import type { Basis } from '../../engine/quantity/types.ts';
import type { Change, Edit, Refit } from '../../engine/refit/types.ts';
import { api, Refusal } from '../api.ts';
import { Engine } from '../worker/client.ts';
import type { Reading, Snapshot } from '../worker/protocol.ts';
import { getPerson } from './person.ts';
import type { Quick } from './quick.ts';

export interface View {
  readonly refit: Refit;
  readonly head: number;
  /** What is recorded. */
  readonly recorded: Snapshot;
  /** What is shown: the same, or with the draft or the trial in it. */
  readonly shown: Snapshot;
  readonly reading: Reading | null;
  readonly trial: { readonly says: string; readonly changes: readonly Change[] } | null;
  readonly saving: 'saved' | 'saving' | 'failed';
  /** The newest thing to say to the person. */
  readonly message: string;
  /** Numbers of edits made here that can be taken back, newest last. */
  readonly undoable: readonly number[];
  /** Another window or person changed it. */
  readonly changedBy: string | undefined;
}

export type State =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly message: string }
  | { readonly state: 'open'; readonly view: View };

/** Milliseconds without a change after which chances are drawn. */
const HAND_RESTS = 150;
/** Milliseconds after a keystroke until the worker is told; less than anything waits that asks it about what is shown. */
const FOLLOWS = 80;

export class Session {
  readonly id: string;
  readonly engine = new Engine();
  #state: State = { state: 'loading' };
  #live: EventSource | undefined;
  readonly #listeners = new Set<() => void>();
  /** Edits go one after another, each based on the one before. */
  #queue: Promise<unknown> = Promise.resolve();
  #draftNumber = 0;
  #settling: ReturnType<typeof setTimeout> | undefined;
  #following: ReturnType<typeof setTimeout> | undefined;
  #quick: Quick | undefined;
  #closed = false;

  constructor(id: string) {
    this.id = id;
    void this.#open();
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  get = (): State => this.#state;

  #set(state: State): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }

  #change(change: Partial<View>): void {
    if (this.#state.state !== 'open') return;
    const { shown, refit } = this.#state.view;
    this.#set({ state: 'open', view: { ...this.#state.view, ...change } });
    if (change.shown && change.shown !== shown) this.#settleSoon();
    if (change.refit && change.refit !== refit) this.#quickSoon();
  }

  /** Once the hand rests, chances worked out from slopes give way to drawn ones. */
  #settleSoon(): void {
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => void this.#settle(), HAND_RESTS);
  }

  async #settle(): Promise<void> {
    const before = this.#view?.shown;
    const answer = await this.engine.ask('settle', null).catch(() => undefined);
    const view = this.#view;
    if (!answer || !view || view.shown !== before) return;
    const { snapshot, isRecorded } = answer;
    this.#set({
      state: 'open',
      view: { ...view, shown: snapshot, ...(isRecorded ? { recorded: snapshot } : {}) },
    });
  }

  get #view(): View | undefined {
    return this.#state.state === 'open' ? this.#state.view : undefined;
  }

  async #open(): Promise<void> {
    try {
      const { refit, head } = await api.open(this.id);
      const snapshot = await this.engine.ask('open', { refit, system: getPerson().system });
      this.#set({
        state: 'open',
        view: {
          refit,
          head,
          recorded: snapshot,
          shown: snapshot,
          reading: null,
          trial: null,
          saving: 'saved',
          message: '',
          undoable: [],
          changedBy: undefined,
        },
      });
      this.#settleSoon();
      this.#follow();
      void this.#fetchQuick();
    } catch (error) {
      this.#set({ state: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  /** Follows edits made elsewhere. */
  #follow(): void {
    const live = api.live(this.id);
    this.#live = live;
    live.addEventListener('edit', ({ data }: MessageEvent<string>) => {
      const { edit } = JSON.parse(data) as { edit: Edit };
      void this.#inTurn(() => this.#takeOver(edit, true));
    });
    live.addEventListener('head', ({ data }: MessageEvent<string>) => {
      const { head } = JSON.parse(data) as { head: number };
      void this.#inTurn(() => this.#catchUp(head));
    });
  }

  async #catchUp(head: number): Promise<void> {
    for (let now = this.#view?.head ?? head; now < head; now = this.#view?.head ?? head) {
      const { edits } = await api.history(this.id, now + 1, head);
      if (edits.length === 0) return;
      for (const edit of edits) await this.#takeOver(edit, true);
    }
  }

  async #takeOver(edit: Edit, foreign: boolean): Promise<void> {
    const view = this.#view;
    if (!view || edit.number <= view.head) return;
    if (edit.number > view.head + 1) {
      await this.#catchUp(edit.number - 1);
    }
    const { refit, snapshot } = await this.engine.ask('apply', { edits: [edit] });
    this.#change({
      refit,
      head: edit.number,
      recorded: snapshot,
      shown: snapshot,
      trial: null,
      ...(foreign ? { changedBy: edit.who, message: `${edit.who}: ${edit.says}` } : {}),
    });
  }

  #inTurn<T>(task: () => Promise<T>): Promise<T> {
    const run = this.#queue.then(task, task);
    this.#queue = run.catch(() => undefined);
    return run;
  }

  /** Whether a text that is not recorded is being tried. */
  isReading = (): boolean => Boolean(this.#view?.reading);

  /** Fetched once the page stands; until then keystrokes go to the worker. */
  async #fetchQuick(): Promise<void> {
    const { Quick: Own } = await import('./quick.ts');
    if (this.#closed) return;
    this.#quick = new Own();
    this.#quickSoon();
  }

  /** Brings the engine beside the hand up to what is recorded, while nobody waits for it. */
  #quickSoon(): void {
    const later = window.requestIdleCallback ?? ((task: () => void) => setTimeout(task, 50));
    later(() => {
      const view = this.#view;
      if (view) this.#quick?.take(view.refit, getPerson().system);
    });
  }

  /** Shows what a text would do, without recording it. */
  async draft(path: string, text: string, basis?: Basis): Promise<void> {
    const mine = ++this.#draftNumber;
    clearTimeout(this.#following);
    const ask = text === '' ? null : { path, text, ...(basis ? { basis } : {}) };
    const view = this.#view;
    if (ask && view && this.#quick?.isFor(view.refit)) {
      const { reading, snapshot } = this.#quick.draft(view.recorded, ask);
      this.#change({ reading, shown: snapshot, trial: null });
      // The worker follows once the hand rests, so that working, pictures and chances are those of what is shown.
      this.#following = setTimeout(() => void this.engine.ask('draft', ask), FOLLOWS);
      return;
    }
    const { reading, snapshot } = await this.engine.ask('draft', ask);
    if (mine === this.#draftNumber) this.#change({ reading, shown: snapshot, trial: null });
  }

  /** Records a text. Resolves to false when it could not be; the reason stands in the message. */
  async commit(path: string, text: string, basis?: Basis, note?: string): Promise<boolean> {
    const mine = ++this.#draftNumber;
    clearTimeout(this.#following);
    const { reading, snapshot } = await this.engine.ask('draft', {
      path,
      text,
      ...(basis ? { basis } : {}),
      ...(note ? { note } : {}),
    });
    if (mine === this.#draftNumber) this.#change({ reading, shown: snapshot, trial: null });
    if (!reading || reading.problem) return false;
    return this.record(reading.changes);
  }

  /** Records changes that stand or fall together. */
  record(changes: readonly Change[]): Promise<boolean> {
    if (changes.length === 0) return Promise.resolve(true);
    this.#change({ saving: 'saving' });
    return this.#inTurn(async () => {
      const view = this.#view;
      if (!view) return false;
      try {
        const { edit } = await api.edit(this.id, getPerson().who, view.head, changes);
        await this.#takeOver(edit, false);
        this.#change({
          saving: 'saved',
          message: `Saved: ${edit.says}`,
          undoable: [...(this.#view?.undoable ?? []), edit.number],
          reading: null,
        });
        return true;
      } catch (error) {
        return this.#refused(error);
      }
    });
  }

  #refused(error: unknown): false {
    const now = error instanceof Refusal && error.now ? ` There now: ${error.now}.` : '';
    this.#change({
      saving: 'failed',
      message: `Not saved. ${error instanceof Error ? error.message : String(error)}${now}`,
    });
    return false;
  }

  undo(number?: number): Promise<boolean> {
    return this.#inTurn(async () => {
      const view = this.#view;
      const target = number ?? view?.undoable.at(-1);
      if (!view || target === undefined) return false;
      try {
        const { edit } = await api.undo(this.id, getPerson().who, target);
        await this.#takeOver(edit, false);
        this.#change({
          saving: 'saved',
          message: `Undone: ${edit.says}`,
          undoable: (this.#view?.undoable ?? []).filter((each) => each !== target),
        });
        return true;
      } catch (error) {
        return this.#refused(error);
      }
    });
  }

  async tryRemedy(remedy: Remedy): Promise<void> {
    clearTimeout(this.#following);
    const changes = await this.engine.ask('remedyChanges', { remedy });
    const shown = await this.engine.ask('attempt', { changes });
    this.#change({ shown, trial: { says: remedy.says, changes }, reading: null });
  }

  async dropTrial(): Promise<void> {
    clearTimeout(this.#following);
    const { snapshot } = await this.engine.ask('draft', null);
    this.#change({ shown: snapshot, trial: null, reading: null });
  }

  async keepTrial(): Promise<boolean> {
    const changes = this.#view?.trial?.changes ?? [];
    return this.record(changes);
  }

  async setSystem(): Promise<void> {
    if (!this.#view) return;
    const snapshot = await this.engine.ask('system', { system: getPerson().system });
    this.#quickSoon();
    this.#change({ recorded: snapshot, shown: snapshot, trial: null, reading: null });
  }

  why(id: string): Promise<Why | null> {
    return this.engine.ask('why', { id });
  }

  close(): void {
    this.#closed = true;
    clearTimeout(this.#settling);
    clearTimeout(this.#following);
    this.#live?.close();
    this.engine.stop();
  }
}

export function useSession(session: Session): State {
  return useSyncExternalStore(session.subscribe, session.get);
}
