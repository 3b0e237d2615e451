/** Safety words of the whole plan. */
export const cautions = {
  plan: "This plan helps a competent person. It replaces no local code, no vehicle maker's instruction and no licensed practice.",
  beforeWork: 'Before any work: negative terminal of every battery off first. Eye protection, no jewelry.',
} as const;
