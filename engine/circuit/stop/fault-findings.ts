/** What single faults come to. */
import { andList } from '../../quantity/words.ts';
import { groupOf } from './fault-groups.ts';
import type { Looked, StopFinding } from './findings.ts';

export function faultFinding({ faults }: Looked): StopFinding {
  const dangerous = faults.filter((each) => groupOf(each) === 'dangerous');
  const resting = faults.filter((each) => groupOf(each) === 'rests');
  const [first] = dangerous;
  return {
    id: 'stop.faults',
    title: 'Does it still stop with any one fault?',
    verdict: first ? 'fails' : 'fits',
    sentence: first
      ? `${dangerous.length} of ${faults.length} single faults ${dangerous.length === 1 ? 'is' : 'are'} dangerous. ${first.says}`
      : `None of ${faults.length - resting.length} single faults that were tried keeps it from stopping.${resting.length > 0 ? ` ${resting.length} more ${resting.length === 1 ? 'rests' : 'rest'} on how a device is made: ${andList(resting.map(({ fault }) => fault.id))}.` : ''}`,
    ...(first ? { remedy: first.catches } : {}),
  };
}

/** Why a fault that nobody is told of counts together with the next one. */
const ADD_UP =
  'A fault that nobody is told of is still there when the next one comes, so the two count together (ISO 13849-1, accumulation of undetected faults; from memory); what moves here can hurt.';

export function unnoticedFinding({ faults }: Looked): StopFinding {
  const common = { id: 'stop.unnoticed', title: 'Is a fault noticed before the next start?' };
  const unnoticed = faults.filter(({ judged }) => judged.verdict === 'unnoticed');
  const ending = unnoticed.filter((each) => groupOf(each) === 'adds-up');
  const first = ending[0] ?? unnoticed[0];
  if (!first)
    return {
      ...common,
      verdict: 'fits',
      sentence: 'Every single fault that was tried keeps it from starting again after some stop.',
    };
  const many = unnoticed.length > 1;
  return {
    ...common,
    verdict: ending.length > 0 ? 'fails' : 'tight',
    sentence: `${unnoticed.length} single ${many ? 'faults are' : 'fault is'} not noticed${
      ending.length > 0
        ? `, and with ${many ? `${ending.length} of them` : 'it'} one more fault ends stopping`
        : ', and no one fault more ends stopping'
    }. ${first.says}${ending.length > 0 ? ` ${ADD_UP}` : ''}`,
    remedy: first.catches,
  };
}
