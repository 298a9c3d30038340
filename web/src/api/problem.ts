/** One field that the portal refused. */
export interface FieldProblem {
  field: string
  value?: unknown
  min?: number | null
  max?: number | null
  unit?: string
  source?: string
  detail: string
}

/** A refusal with its reason, as the portal words it (RFC 9457). */
export class Problem extends Error {
  /** HTTP status; 0 where the portal could not be reached. */
  readonly status: number
  /** Stable code in kebab case, see docs/reference/errors.md. */
  readonly code: string
  readonly fields: FieldProblem[]
  /** Everything else that came with it. */
  readonly body: Record<string, unknown>

  constructor(status: number, code: string, detail: string, body: Record<string, unknown> = {}) {
    super(detail)
    this.status = status
    this.code = code
    this.body = body
    const errors = Array.isArray(body.errors) ? (body.errors as FieldProblem[]) : []
    const single = typeof body.field === 'string' ? [{ field: body.field, detail }] : []
    this.fields = errors.length > 0 ? errors : single
  }

  get noSignal(): boolean {
    return this.status === 0
  }

  static of(thrown: unknown): Problem {
    if (thrown instanceof Problem) return thrown
    const why = thrown instanceof Error ? thrown.message : String(thrown)
    return new Problem(0, 'client-error', why)
  }
}
