export function PictureCard(_: { picture: unknown; onSelectFinding: (id: string) => void }) {
  return null;
}
