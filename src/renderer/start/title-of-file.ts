/** What a scan's file name suggests as a title: `deck_ventilator-2.tif` → `deck ventilator 2`. */
export function titleOfFile(name: string | undefined): string {
  return (name ?? '')
    .replace(/\.[^.]*$/, '')
    .replace(/[_-]+/g, ' ')
    .trim()
}
