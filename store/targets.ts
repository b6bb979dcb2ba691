/** What an edit touches, as text, to see whether two edits met: a part and its facts touch each other. */
import type { Change } from '../engine/refit/index.ts';

export function targetOf(change: Change): string {
  switch (change.do) {
    case 'fact':
      return `part/${change.part}/${change.fact}`;
    case 'part':
      return `part/${change.id}`;
    case 'place':
      return change.chain === null ? `place/${change.place}` : `chain/${change.chain}/${change.place}`;
    case 'chain':
      return `chain/${change.id}`;
    case 'policy':
      return `policy/${change.policy}`;
    case 'evidence':
    case 'tag':
    case 'keep':
    case 'survey':
    case 'work':
    case 'auxiliary':
    case 'device':
    case 'wire':
    case 'cable':
      return `${change.do}/${change.id}`;
    case 'wiring-setting':
      return `${change.do}/${change.setting}`;
    case 'stop':
    case 'machine':
    case 'title':
      return change.do;
  }
}

/** What the target stands within, if that can be replaced as a whole: a fact's part, a place's chain. */
export function ownerOf(target: string): string | undefined {
  const steps = target.split('/');
  return steps.length === 3 ? steps.slice(0, 2).join('/') : undefined;
}
