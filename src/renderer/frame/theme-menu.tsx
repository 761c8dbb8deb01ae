import { useBench } from '../bench/bench-store.ts'
import { lookBy } from '../bench/settings.ts'
import { Menu } from '../parts/menu.tsx'

const OPTIONS = [
  { id: 'system', label: 'As the system' },
  { id: 'light', label: 'Light' },
  { id: 'dark', label: 'Dark' },
]

/** Light, dark, or as the system is. */
export function ThemeMenu() {
  const theme = useBench((bench) => bench.theme)
  return (
    <Menu
      label="Light and dark"
      icon={theme}
      options={OPTIONS}
      value={theme}
      onChange={(id) => lookBy(id === 'light' || id === 'dark' ? id : 'system')}
    />
  )
}
