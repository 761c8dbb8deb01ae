import { usePagesAsked } from './choose-pages.ts'
import { PagesOfScan } from './pages-of-scan.tsx'

/** Asks which pages of a scan are wanted, while there is one to ask about. */
export function PagesDialog() {
  const asked = usePagesAsked((state) => state.asked)
  return asked === null ? null : <PagesOfScan {...asked} key={asked.look.upload} />
}
