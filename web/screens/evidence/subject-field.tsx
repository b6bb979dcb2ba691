/** Which axis or part a bench test is made on. */
import { useId } from 'react';
import type { Subject } from './groups.ts';

interface SubjectProps {
  readonly subjects: readonly Subject[];
  readonly subject: string;
  readonly isFixed: boolean;
  readonly onChoose: (value: string) => void;
}

export function SubjectField({ subjects, subject, isFixed, onChoose }: SubjectProps) {
  const id = useId();
  return (
    <div className="bench-subject">
      <label htmlFor={id}>Measured on</label>
      <select id={id} value={subject} disabled={isFixed} onChange={(event) => onChoose(event.target.value)}>
        {subject === '' && <option value="">choose which one</option>}
        {subjects.map(({ value, words }) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
