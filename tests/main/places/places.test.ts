import { expect, test } from 'vitest'
import { placesFor } from '../../../src/main/services/places/places.ts'

test('on Linux settings are where the XDG Base Directory Specification puts them, jobs in the home folder', () => {
  const home = '/home/rivet'
  expect(placesFor({ platform: 'linux', env: {}, home })).toEqual({
    settings: '/home/rivet/.config/scantling',
    shelf: '/home/rivet/Scantling',
  })
  expect(placesFor({ platform: 'linux', env: { XDG_CONFIG_HOME: '/etc/own' }, home }).settings).toBe(
    '/etc/own/scantling',
  )
})

test.each(['', 'relative/folder'])('an XDG_CONFIG_HOME that is no absolute path is ignored (%j)', (value) => {
  const { settings } = placesFor({ platform: 'linux', env: { XDG_CONFIG_HOME: value }, home: '/home/rivet' })
  expect(settings).toBe('/home/rivet/.config/scantling')
})

test('on macOS settings are in Application Support', () => {
  expect(placesFor({ platform: 'darwin', env: { XDG_CONFIG_HOME: '/etc' }, home: '/Users/rivet' })).toEqual({
    settings: '/Users/rivet/Library/Application Support/Scantling',
    shelf: '/Users/rivet/Scantling',
  })
})

test.each([
  [{ APPDATA: 'D:\\Roaming' }, 'D:\\Roaming\\Scantling'],
  [{}, 'C:\\Users\\rivet\\AppData\\Roaming\\Scantling'],
])('on Windows settings are in the roaming AppData', (env, settings) => {
  expect(placesFor({ platform: 'win32', env, home: 'C:\\Users\\rivet' })).toEqual({
    settings,
    shelf: 'C:\\Users\\rivet\\Scantling',
  })
})

test('SCANTLING_HOME puts settings and jobs below one folder on every system', () => {
  expect(placesFor({ platform: 'linux', env: { SCANTLING_HOME: '/tmp/try' }, home: '/home/rivet' })).toEqual({
    settings: '/tmp/try/settings',
    shelf: '/tmp/try/jobs',
  })
  const { shelf } = placesFor({ platform: 'win32', env: { SCANTLING_HOME: 'E:\\try' }, home: 'C:\\' })
  expect(shelf).toBe('E:\\try\\jobs')
})
