/** Open line symbols of the links of a chain; the motor is IEC 60617's circle M. Drawn by us. */
import type { ReactNode } from 'react';

const thread = [0, 1, 2, 3, 4, 5, 6].map((k) => (
  <line key={k} x1={10 + k * 7} y1="32" x2={15 + k * 7} y2="18" />
));

const SIGNS: Readonly<Record<string, ReactNode>> = {
  duty: <path d="M10 40h44M14 40c10 0 8-28 20-28s10 28 16 28" />,
  control: (
    <>
      <rect x="12" y="10" width="40" height="30" rx="3" />
      <path d="M18 32v-14h8v14h8v-14h8v14h4" />
    </>
  ),
  drive: <path d="M18 8v34l32-17z" />,
  motor: (
    <>
      <circle cx="32" cy="25" r="17" />
      <path d="M25 32v-14l7 9 7-9v14" />
    </>
  ),
  reduction: (
    <>
      <circle cx="22" cy="25" r="7" />
      <circle cx="44" cy="25" r="10" />
      <path d="M21 18L43 15M21 32L43 35" />
    </>
  ),
  screw: (
    <>
      <rect x="6" y="18" width="52" height="14" />
      {thread}
    </>
  ),
  slide: (
    <>
      <rect x="14" y="12" width="36" height="16" />
      <path d="M6 34h52M12 34l5-6M52 34l-5-6" />
    </>
  ),
  feedback: (
    <>
      <circle cx="32" cy="25" r="15" />
      <circle cx="32" cy="25" r="5" />
      <path d="M32 10v6M32 34v6M17 25h6M41 25h6M21 14l4 4M43 14l-4 4M21 36l4-4M43 36l-4-4" />
    </>
  ),
  brake: (
    <>
      <circle cx="28" cy="25" r="13" />
      <path d="M44 12v26M49 12v26M44 25h-3" />
    </>
  ),
  supply: (
    <>
      <circle cx="25" cy="25" r="11" />
      <circle cx="39" cy="25" r="11" />
    </>
  ),
  site: (
    <>
      <path d="M12 25c7-16 13-16 20 0s13 16 20 0" />
    </>
  ),
};

export function Sign({ place }: { place: string }) {
  return (
    <svg
      className="sign"
      viewBox="0 0 64 50"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {SIGNS[place]}
    </svg>
  );
}
