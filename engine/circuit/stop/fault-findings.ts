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

export function unnoticedFinding({ faults }: Looked): StopFinding {
  const unnoticed = faults.filter((each) => groupOf(each) === 'unnoticed');
  const [first] = unnoticed;
  return {
    id: 'stop.unnoticed',
    title: 'Is a fault noticed before the next start?',
    verdict: first ? 'tight' : 'fits',
    sentence: first
      ? `${unnoticed.length} single faults are not noticed. ${first.says}`
      : 'Every single fault that was tried keeps it from starting again after some stop.',
    ...(first ? { remedy: first.catches } : {}),
  };
}
