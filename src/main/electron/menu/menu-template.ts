import type { MenuItemConstructorOptions } from 'electron'
import type { RecentJob } from '../../../contract/bench-state.ts'
import type { WindowCommand } from '../../../contract/host-event.ts'

/** What the menu says of how things stand. */
export interface MenuState {
  recent: readonly RecentJob[]
  opened: { undoName?: string; redoName?: string } | null
}

export interface MenuActions {
  openFolder(): void
  openSample(): void
  openRecent(id: string): void
  /** What the window itself does. */
  command(command: WindowCommand): void
}

/** The native menu. */
export function menuTemplate(
  { recent, opened }: MenuState,
  actions: MenuActions,
  platform: NodeJS.Platform,
): MenuItemConstructorOptions[] {
  const inJob = (
    label: string,
    command: WindowCommand,
    accelerator?: string,
  ): MenuItemConstructorOptions => ({
    label,
    enabled: opened !== null,
    click: () => actions.command(command),
    ...(accelerator === undefined ? {} : { accelerator }),
  })
  const recentItems = recent.map(
    ({ id, title, place }): MenuItemConstructorOptions => ({
      label: withoutMnemonic(`${title} – ${place}`),
      click: () => actions.openRecent(id),
    }),
  )
  return [
    ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&File',
      submenu: [
        { label: 'Open a job folder…', accelerator: 'CmdOrCtrl+O', click: () => actions.openFolder() },
        { label: 'Open the sample', click: () => actions.openSample() },
        { label: 'Open a recent job', enabled: recent.length > 0, submenu: recentItems },
        { type: 'separator' },
        inJob('Bring in a scan…', 'bring-in-scan', 'CmdOrCtrl+I'),
        { type: 'separator' },
        inJob('Close the job', 'close-job', 'CmdOrCtrl+W'),
        ...(platform === 'darwin' ? [] : [{ role: 'quit', label: 'Quit' } as const]),
      ],
    },
    {
      label: '&Edit',
      submenu: [
        inJob(withoutMnemonic(`Undo ${opened?.undoName ?? ''}`.trim()), 'undo', 'CmdOrCtrl+Z'),
        inJob(
          withoutMnemonic(`Redo ${opened?.redoName ?? ''}`.trim()),
          'redo',
          platform === 'win32' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z',
        ),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: '&View',
      submenu: [
        inJob('Enlarge the sheet', 'zoom-in', 'CmdOrCtrl+Plus'),
        inJob('Reduce the sheet', 'zoom-out', 'CmdOrCtrl+-'),
        inJob('The whole sheet', 'whole-sheet', 'CmdOrCtrl+0'),
        { type: 'separator' },
        { role: 'togglefullscreen', label: 'Full screen' },
      ],
    },
    { label: '&Help', role: 'help', submenu: [{ role: 'about', label: 'About Scantling' }] },
  ]
}

/** In a menu `&` marks the letter that chooses an item; `&&` shows one. */
const withoutMnemonic = (label: string): string => label.replaceAll('&', '&&')
