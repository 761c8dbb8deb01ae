import { expect, test, vi } from 'vitest'
import type { MenuState } from '../../../src/main/electron/menu/menu-template.ts'
import { menuTemplate } from '../../../src/main/electron/menu/menu-template.ts'
import { reason } from '../../../src/main/services/words/services-words.ts'
import { jobOnBench } from './fixtures/bench-stand-in.ts'
import { kept, type MenuItem } from './fixtures/electron-stand-in.ts'
import { type Started, started } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

const allItems = (items: readonly MenuItem[]): MenuItem[] =>
  items.flatMap((item) => [item, ...allItems(item.submenu ?? [])])

/** The item of the menu as it is now. */
function item(label: string): MenuItem {
  const found = allItems(kept.menus.at(-1) ?? []).find((one) => one.label === label)
  if (found === undefined) throw new Error(`The menu has no “${label}”.`)
  return found
}

const commands = ({ window }: Started): unknown[] =>
  window.webContents.sent.filter(([, event]) => isCommand(event))
const isCommand = (event: unknown): boolean =>
  typeof event === 'object' && event !== null && 'kind' in event && event.kind === 'command'

test.each([
  ['Undo add view “Plan”', 'undo', 'CmdOrCtrl+Z'],
  ['Redo', 'redo', process.platform === 'win32' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z'],
  ['Bring in a scan…', 'bring-in-scan', 'CmdOrCtrl+I'],
  ['Close the job', 'close-job', 'CmdOrCtrl+W'],
  ['Enlarge the sheet', 'zoom-in', 'CmdOrCtrl+Plus'],
  ['Reduce the sheet', 'zoom-out', 'CmdOrCtrl+-'],
  ['The whole sheet', 'whole-sheet', 'CmdOrCtrl+0'],
])('“%s” reaches the window as the command %s', async (label, command, accelerator) => {
  const all = await started()
  all.bench.tell({ kind: 'bench', state: jobOnBench })
  const { enabled, click, accelerator: keys } = item(label)
  click?.()
  expect([enabled, keys]).toEqual([true, accelerator])
  expect(commands(all)).toEqual([['event', { kind: 'command', command }]])
})

test('what needs a job can’t be chosen while none is open', async () => {
  const { bench } = await started()
  for (const label of ['Undo', 'Redo', 'Close the job', 'Bring in a scan…', 'The whole sheet']) {
    expect(item(label).enabled).toBe(false)
  }
  bench.tell({ kind: 'bench', state: jobOnBench })
  expect(item('Close the job').enabled).toBe(true)
})

test.each([
  ['Open a job folder…', ['choose-job', {}]],
  ['Open the sample', ['open-sample', {}]],
  ['Winch && drum – ~/Scantling/winch', ['open-recent', { recent: 'r1' }]],
])('“%s” asks the workbench', async (label, ask) => {
  const { bench } = await started()
  item(label).click?.()
  expect(bench.asked.at(-1)).toEqual(ask)
})

test('what the workbench refuses is told in a dialog', async () => {
  const { bench } = await started()
  bench.refuses = reason('recent.not-listed')
  item('Open the sample').click?.()
  await vi.waitFor(() =>
    expect(kept.messages).toMatchObject([
      { message: 'That job is not on the list any more: choose another.' },
    ]),
  )
})

test('the menu names what would be undone, after every edit', async () => {
  const { bench } = await started()
  const kept = { edits: [], name: 'add mark M1', savedAt: '2026-01-02T03:04:05Z', scans: [] }
  bench.tell({ kind: 'committed', committed: { ...kept, undoName: 'add mark M1' } })
  expect(item('Undo add mark M1').enabled).toBe(true)
  bench.tell({ kind: 'committed', committed: { ...kept, redoName: 'add mark M1' } })
  expect(item('Redo add mark M1').enabled).toBe(true)
  expect(item('Undo').enabled).toBe(true)
})

test('the menu is left alone while nothing in it changes', async () => {
  const { bench } = await started()
  bench.tell({ kind: 'bench', state: jobOnBench })
  const before = kept.menus.length
  bench.tell({ kind: 'bench', state: jobOnBench })
  bench.tell({ kind: 'command', command: 'undo' })
  expect(kept.menus).toHaveLength(before)
})

const actions = { openFolder: vi.fn(), openSample: vi.fn(), openRecent: vi.fn(), command: vi.fn() }
const state: MenuState = { recent: [], opened: null }

test.each(['darwin', 'linux', 'win32'] as const)(
  'on %s the menu leads nowhere outside and uses no key twice',
  (platform) => {
    const items = allItems(menuTemplate(state, actions, platform) as MenuItem[])
    const keys = items.flatMap(({ accelerator }) => accelerator ?? [])
    expect(new Set(keys).size).toBe(keys.length)
    const roles = items.flatMap(({ role }) => role ?? [])
    for (const role of ['reload', 'forceReload', 'toggleDevTools', 'undo', 'redo'])
      expect(roles).not.toContain(role)
    expect(roles).toEqual(expect.arrayContaining(['cut', 'copy', 'paste', 'selectAll']))
    expect(roles.includes('appMenu')).toBe(platform === 'darwin')
  },
)
