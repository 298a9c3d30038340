import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { get } from '../../api/http.ts'
import { housePath } from '../../record/record.ts'
import { ended, type Job } from '../../wall/run.ts'

const BASE = '/api/v1'
const LOOK_EVERY_MS = 2000

/** How far a job is, as the portal tells it; where the stream breaks it is asked for again and again instead. */
export function useJob(house: string, id: string, onEnd: () => void) {
  const job = useSignal<Job | undefined>(undefined)
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is done at the end does not begin the listening anew
  useEffect(() => {
    let over = false
    let timer: ReturnType<typeof setTimeout> | undefined
    const path = `${housePath(house)}/jobs/${encodeURIComponent(id)}`
    const stream = new EventSource(`${BASE}${path}/progress`)
    const took = (came: Job) => {
      if (over) return
      job.value = came
      if (ended(came.state)) {
        over = true
        stream.close()
        onEnd()
      }
    }
    const look = async () => {
      try {
        took(await get<Job>(path))
      } catch {
        // no signal: the next look may have it
      }
      if (!over) timer = setTimeout(look, LOOK_EVERY_MS)
    }
    stream.addEventListener('job', (e) => took(JSON.parse((e as MessageEvent<string>).data) as Job))
    stream.onerror = () => {
      stream.close()
      if (!over && timer === undefined) void look()
    }
    return () => {
      over = true
      stream.close()
      clearTimeout(timer)
    }
  }, [house, id, job])
  return job
}
