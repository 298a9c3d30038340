import { render } from 'preact'
import { startQueue } from './offline/queue.ts'
import { App } from './shell/App.tsx'
import { apply } from './shell/scheme.ts'
import { askWho } from './shell/session.ts'
import './style/index.css'

apply()
render(<App />, document.getElementById('app')!)
void askWho().then(startQueue)

if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  void navigator.serviceWorker.register('/sw.js')
}
