import type { BrowserWindow } from 'electron'
import { DESKTOP_CHANNELS } from '../../../contract/message-bridge.ts'
import type { Reply } from '../../../contract/reply.ts'
import type { Workbench } from '../../services/workbench/workbench.ts'
import type { MenuActions } from './menu-template.ts'

/**
 * What the items of the menu do: the workbench opens jobs, the window does the rest.
 * @param tell tells a person what was refused
 */
export function menuActions(
  window: BrowserWindow,
  workbench: Pick<Workbench, 'ask'>,
  tell: (sentence: string) => void,
): MenuActions {
  const tellRefusal = (asked: Promise<Reply>): void => {
    void asked.then((reply) => (reply.ok ? undefined : tell(reply.sentence)))
  }
  return {
    openFolder: () => tellRefusal(workbench.ask('choose-job', {})),
    openSample: () => tellRefusal(workbench.ask('open-sample', {})),
    openRecent: (recent) => tellRefusal(workbench.ask('open-recent', { recent })),
    command(command) {
      if (window.isDestroyed()) return
      window.webContents.send(DESKTOP_CHANNELS.event, { kind: 'command', command })
    },
  }
}
