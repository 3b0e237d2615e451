/** A parsed document of any version. */
export type JsonObject = { readonly [key: string]: unknown };

/** Brings a document of the version before `to` up to it. */
export interface Step {
  /** What changed, in a few words of the code. */
  readonly name: string;
  readonly to: number;
  /** Answers a changed copy; never touches its argument. May throw on a document that is not what it should be. */
  readonly up: (document: JsonObject) => JsonObject;
}

export const isJsonObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
