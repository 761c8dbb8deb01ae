import { spawn } from 'node:child_process'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { performance } from 'node:perf_hooks'
import { afterEach, expect, test } from 'vitest'
import { thisMachine } from '../../../src/main/launch/surroundings.ts'
import { bundleProgram } from '../fixtures/bundle-program.ts'

const servers: Server[] = []
afterEach(() => {
  for (const server of servers.splice(0)) server.closeAllConnections()
})

const listening = (answer: (request: IncomingMessage, response: ServerResponse) => void): Promise<string> =>
  new Promise((resolve) => {
    const server = createServer(answer)
    servers.push(server)
    server.listen(0, '127.0.0.1', () =>
      resolve(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`),
    )
    server.unref()
  })

test('an address answers when it does so well, and in time', async () => {
  const here = thisMachine()
  let method: string | undefined
  const good = await listening((request, response) => {
    method = request.method
    response.end()
  })
  expect([await here.answers(good, 2000), method]).toEqual([true, 'HEAD'])
  const bad = await listening((_, response) => response.writeHead(403).end())
  expect(await here.answers(bad, 2000)).toBe(false)
  expect(await here.answers('http://127.0.0.1:1/', 2000)).toBe(false)
})

test('an address that never answers holds nothing up', async () => {
  const silent = await listening(() => undefined)
  const began = performance.now()
  expect(await thisMachine().answers(silent, 200)).toBe(false)
  expect(performance.now() - began).toBeLessThan(2000)
})

test('a program is started, its end told, and one that is not there is no surprise', async () => {
  const here = thisMachine()
  expect(await here.start(process.execPath, ['-e', 'process.exit(7)'], false).ended).toEqual({ code: 7 })
  expect(await here.start('/nowhere/browser', [], false).ended).toMatchObject({
    code: null,
    problem: expect.stringContaining('ENOENT'),
  })
  const endless = here.start(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], false)
  endless.stop()
  expect(await endless.ended).toEqual({ code: null, problem: 'SIGTERM' })
})

test('a browser that goes on in the background does not hold this program up', async () => {
  const program = await bundleProgram('tests/main/fixtures/start-and-leave.ts')
  const began = performance.now()
  const code = await new Promise((resolve) => spawn(process.execPath, [program.path]).on('exit', resolve))
  await program.remove()
  expect(code).toBe(0)
  expect(performance.now() - began).toBeLessThan(15_000)
})

test('a package is found without running anything of it', () => {
  expect(thisMachine().packageFolder('electron')).toMatch(/node_modules\/electron$/)
  expect(thisMachine().packageFolder('no-such-package-here')).toBeUndefined()
  expect(thisMachine().readText('/nowhere/at/all')).toBeUndefined()
})
