/** From what is known of a part to one answer. Stated as a policy of the trade: common practice, no source. */
import type { Finding } from '../assess/index.ts';
import { compareMoney } from '../quantity/index.ts';
import type { Condition } from '../refit/types.ts';
import type { Bill, Change, Cure, Reason, Recommendation, Swap } from './types.ts';

const PRACTICE = 'common practice, no source';

export interface Known {
  readonly name: string;
  readonly condition: Condition | undefined;
  /** Still to be bought: judged by what it would do, not by how it was found. */
  readonly toBuy: boolean;
  readonly reasons: readonly Reason[];
  readonly asks: readonly Finding[];
  readonly cures: readonly Cure[];
  readonly keeping: Bill;
  readonly swaps: readonly Swap[];
}

export interface Decision {
  readonly recommendation: Recommendation;
  readonly sentence: string;
  /** Reasons that came out of weighing. */
  readonly reasons: readonly Reason[];
}

/** A question that no longer arises is only answered where those that come in its place are. */
const answered = (swap: Swap, { after }: Change): boolean =>
  after === undefined ? swap.loses === 0 : after === 'fits' || after === 'tight';

/** Mends something, or there is nothing to mend, and breaks nothing. */
const sound = (swap: Swap): boolean => swap.breaks === 0;

/** An answer waits for so large a share of unknown findings that keeping it would be a bet. */
const TOO_LITTLE = 0.5;

export function decide(known: Known): Decision {
  const { condition, asks, cures, swaps, reasons } = known;
  const own: Reason[] = [];
  const say = (towards: Reason['towards'], sentence: string): void => {
    own.push({ towards, sentence, source: PRACTICE });
  };
  const done = (recommendation: Recommendation, sentence: string): Decision => ({
    recommendation,
    sentence,
    reasons: own,
  });
  const fails = asks.filter(({ verdict }) => verdict === 'fails');
  const unknown = asks.filter(({ verdict }) => verdict === 'unknown');
  const best = swaps.find(sound);
  const dearer = cheaperSwap(known);

  if (condition === 'dead') {
    say(
      'note',
      'Make sure first that it is dead and not asleep: a fuse, an open interlock or a lost reference looks the same.',
    );
    if (
      known.keeping.complete &&
      known.keeping.items.some(({ path }) => path.endsWith('.repairCost')) &&
      !dearer
    ) {
      say('repair', 'What its repair costs is known, and nothing on offer is surely cheaper.');
      return done('repair', 'It is dead, and repairing it costs no more than replacing it.');
    }
    if (best) {
      say('replace', `“${best.says}” can take its place without making anything fail.`);
      return done('replace', 'It is dead, and something on offer does its work.');
    }
    return done(
      'find-out',
      swaps.length > 0
        ? 'It is dead, and nothing on offer takes its place without trouble elsewhere: ask what a repair costs.'
        : 'It is dead, and nothing else is on offer yet: ask what a repair and what another one costs.',
    );
  }

  const against = reasons.find(({ towards }) => towards === 'replace');
  if (against)
    return done(
      'replace',
      best
        ? `${against.sentence} “${best.says}” is on offer.`
        : `${against.sentence} Nothing that does its work is on offer yet.`,
    );

  const uncured = fails.filter(({ id }) => !cures.some(({ finding }) => finding === id));
  if (uncured.length > 0) {
    const titles = uncured.map(({ title }) => `“${title}”`).join(', ');
    const mending = swaps.find(
      (swap) =>
        sound(swap) &&
        uncured.every(({ id }) => swap.changes.some((change) => change.id === id && answered(swap, change))),
    );
    if (mending) {
      say('replace', `More is asked of it than it gives (${titles}), and “${mending.says}” mends that.`);
      return done('replace', 'It cannot do what is asked of it, and something on offer can.');
    }
    say(
      'find-out',
      `More is asked of it than it gives (${titles}), and nothing on offer mends that alone. The remedy may lie in another part: “why” of each finding lists what would make it fit.`,
    );
    return done(
      'find-out',
      'It does not do what is asked, and nothing on offer mends it: look at what would make each finding fit before you spend anything.',
    );
  }
  for (const { says, wish } of new Map(cures.map((each) => [each.says, each])).values())
    say(
      'keep',
      wish ? `It can stay if you ask a little less: ${says}.` : `It can stay with another setting: ${says}.`,
    );

  const less =
    cures.length > 0
      ? ` That holds only if ${cures.some(({ wish }) => wish) ? 'a little less is asked of it' : 'it is set otherwise'}.`
      : '';
  if (known.toBuy) {
    say(
      'note',
      'Nobody has noted its condition, and it has a price or is known from its datasheet alone: it counts as still to be bought. Is it there already? Then note its condition in the survey.',
    );
    return buying(known, less, say, done);
  }
  if (condition === undefined || condition === 'unknown') {
    say(
      'find-out',
      condition === undefined
        ? 'Nobody has noted its condition. Mark a new part as one that works.'
        : 'Its condition is not known: look at it, turn it by hand, test it on the bench.',
    );
    return done('find-out', 'Look at it and test it before anything is decided.');
  }
  const open = reasons.find(({ towards }) => towards === 'find-out');
  if (open) return done('find-out', open.sentence);
  if (tooLittle(unknown.length, asks.length)) {
    say('find-out', `${unknown.length} of ${asks.length} questions about it cannot be answered yet.`);
    return done('find-out', 'Too little is known of it to call it good.');
  }

  const mend = reasons.find(({ towards }) => towards === 'repair');
  if (mend || condition === 'worn') {
    if (dearer) {
      say('replace', `“${dearer.says}” surely costs less than putting it right.`);
      return done(
        'replace',
        'Putting it right costs more than replacing it, and the other one does its work.',
      );
    }
    if (!mend) say('repair', 'It is marked as worn.');
    return done(
      'repair',
      `${mend?.sentence ?? 'Put its wear right, and it does what is asked of it.'}${less}`,
    );
  }
  if (dearer) {
    say('replace', `“${dearer.says}” surely costs less, and makes nothing worse.`);
    return done(
      'replace',
      'It works, but keeping it costs more than a replacement that makes nothing worse.',
    );
  }
  if (asks.length > 0 && fails.length === 0)
    say('keep', `Everything that could be asked of it ${unknown.length > 0 ? 'so far ' : ''}goes.`);
  return done('keep', `It works and does what is asked of it.${less}`);
}

type Say = (towards: Reason['towards'], sentence: string) => void;
type Done = (recommendation: Recommendation, sentence: string) => Decision;

/** There is nothing to look at yet: only what it would do counts, and what is known of that. */
function buying(known: Known, less: string, say: Say, done: Done): Decision {
  const { asks, reasons } = known;
  const unknown = asks.filter(({ verdict }) => verdict === 'unknown').length;
  const open = reasons.find(({ towards }) => towards === 'find-out');
  if (open) return done('find-out', `To be bought. ${open.sentence}`);
  if (tooLittle(unknown, asks.length)) {
    say('find-out', `${unknown} of ${asks.length} questions about it cannot be answered yet.`);
    return done(
      'find-out',
      'To be bought, but too little is known of it: ask the seller for its datasheet before you order.',
    );
  }
  const dearer = cheaperSwap(known);
  if (dearer) {
    say('replace', `“${dearer.says}” surely costs less, and makes nothing worse.`);
    return done('replace', `To be bought, but “${dearer.says}” surely costs less and makes nothing worse.`);
  }
  if (asks.length === 0) return done('buy', 'To be bought. Nothing is asked of it by itself.');
  say(
    'buy',
    `Everything that could be asked of it ${unknown > 0 ? 'so far ' : ''}goes, by what is known on paper.`,
  );
  return done('buy', `To be bought: by what is known it will do what is asked of it.${less}`);
}

const tooLittle = (unknown: number, asked: number): boolean => unknown > 1 && unknown / asked > TOO_LITTLE;

/** A swap that makes nothing worse and whose whole price is surely below that of keeping. */
function cheaperSwap({ keeping, swaps }: Known): Swap | undefined {
  const { total } = keeping;
  if (!total || !keeping.complete) return undefined;
  return swaps.find(
    (swap) =>
      swap.breaks === 0 &&
      swap.loses === 0 &&
      swap.bill.complete &&
      swap.bill.total &&
      compareMoney(swap.bill.total, total) === -1,
  );
}
