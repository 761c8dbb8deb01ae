import './look/tokens.css'
import './look/fonts.css'
import './look/base.css'
import './look/blocks.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { recallSettings } from './bench/settings.ts'
import { takeBench, takeEvent } from './bench/store-sync.ts'
import { ask, hostAnswers, setHost } from './bench/the-host.ts'
import { connect } from './host/connect.ts'

const root = document.getElementById('window')
if (root === null) throw new Error('The page has no place for the window.')

recallSettings()
const host = connect(hostAnswers)
setHost(host)
host.listen(takeEvent)
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
const state = await ask('look', {})
if (state !== undefined) takeBench(state)
