import { Menu } from 'electron'
import type { HostEvent } from '../../../contract/host-event.ts'
import { type MenuActions, type MenuState, menuTemplate } from './menu-template.ts'

/**
 * Keeps the native menu as things stand: recent jobs, what would be undone.
 * @param listen hears what the workbench tells
 * @returns ends it
 */
export function keepMenu(
  start: MenuState,
  actions: MenuActions,
  listen: (heard: (event: HostEvent) => void) => () => void,
): () => void {
  let shown = ''
  const show = (state: MenuState): void => {
    const now = JSON.stringify(state)
    // A menu that is open closes when it is replaced: only where something in it is different.
    if (now === shown) return
    shown = now
    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(state, actions, process.platform)))
  }
  let state = start
  show(state)
  return listen((event) => {
    if (event.kind === 'bench') state = menuState(event.state)
    else if (event.kind === 'committed') state = { ...state, opened: undoNames(event.committed) }
    else return
    show(state)
  })
}

/** What the menu needs of the state of the bench. */
export const menuState = ({ recent, opened }: MenuState): MenuState => ({
  recent,
  opened: opened === null ? null : undoNames(opened),
})

function undoNames({
  undoName,
  redoName,
}: NonNullable<MenuState['opened']>): NonNullable<MenuState['opened']> {
  return {
    ...(undoName === undefined ? {} : { undoName }),
    ...(redoName === undefined ? {} : { redoName }),
  }
}
