import { useCallback, useState } from 'react'
import { I18nProvider } from 'react-aria-components'
import { useBench } from './bench/bench-store.ts'
import { useKeptFocus } from './focus/use-kept-focus.ts'
import { Frame } from './frame/frame.tsx'
import { KeysDialog } from './frame/keys-dialog.tsx'
import { useCommands } from './frame/use-commands.ts'
import { useKeys } from './frame/use-keys.ts'
import { useLeavePage } from './frame/use-leave-page.ts'
import { useStayHere } from './frame/use-stay-here.ts'
import { useTheme } from './frame/use-theme.ts'
import { PagesDialog } from './intake/pages-of-scan.tsx'
import { StartPage } from './start/start-page.tsx'

/** The window: the start page, or the bench with a job on it. */
export function App() {
  const ready = useBench((bench) => bench.host !== null)
  const open = useBench((bench) => bench.opened !== null)
  const [keys, setKeys] = useState(false)
  useTheme()
  useCommands()
  useKeptFocus()
  useLeavePage()
  useStayHere()
  useKeys(useCallback(() => setKeys(true), []))
  const showKeys = () => setKeys(true)
  return (
    <I18nProvider locale="en-GB">
      {ready && (open ? <Frame showKeys={showKeys} /> : <StartPage />)}
      <PagesDialog />
      <KeysDialog open={keys} onClose={() => setKeys(false)} />
    </I18nProvider>
  )
}
