/** Days and times as people write them: '25 Nov 2026', never a row of numbers that two countries read otherwise. */

/** 'Sept' of the British is one letter longer than every other month. */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** '25 Nov 2026', where the reader is; the text itself where it is no date. */
export function sayDay(when: string): string {
  const day = new Date(when);
  return Number.isNaN(day.getTime())
    ? when
    : `${day.getDate()} ${MONTHS[day.getMonth()]} ${day.getFullYear()}`;
}

/** '25 Nov 2026, 14:03'. */
export function sayTime(when: string): string {
  const day = new Date(when);
  if (Number.isNaN(day.getTime())) return when;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${sayDay(when)}, ${two(day.getHours())}:${two(day.getMinutes())}`;
}
