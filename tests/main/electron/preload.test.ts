import { beforeAll, expect, test, vi } from 'vitest'
import type { MessageBridge } from '../../../src/contract/message-bridge.ts'
import { ipcRenderer, kept } from './fixtures/electron-stand-in.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

beforeAll(async () => {
  await import('../../../src/main/electron/preload/index.ts')
})

const bridge = () => kept.exposed.get('scantling') as unknown as MessageBridge

test('the page gets two functions and nothing else', () => {
  expect([...kept.exposed.keys()]).toEqual(['scantling'])
  expect(Object.keys(bridge()).sort()).toEqual(['ask', 'listen'])
})

test('an ask goes over the one channel for asks, whatever its name', async () => {
  await bridge().ask('look', {})
  await bridge().ask('other-channel' as 'look', {})
  expect(kept.invoked).toEqual([
    ['ask', 'look', {}],
    ['ask', 'other-channel', {}],
  ])
})

test('a listener gets the payload alone, and none after it has ended', () => {
  const heard: unknown[][] = []
  const end = bridge().listen((...args) => heard.push(args))
  ipcRenderer.emit('event', { sender: ipcRenderer }, { kind: 'command', command: 'undo' })
  end()
  ipcRenderer.emit('event', { sender: ipcRenderer }, { kind: 'command', command: 'redo' })
  expect(heard).toEqual([[{ kind: 'command', command: 'undo' }]])
  expect(end()).toBeUndefined()
  expect(ipcRenderer.eventNames()).toEqual([])
})
