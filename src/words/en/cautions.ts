/** Safety words, each beside what it concerns. */
export const cautions = {
  plan: "This plan helps a competent person. It replaces no local code, no vehicle maker's instruction and no licensed practice.",
  beforeWork: 'Before any work: negative terminal of every battery off first. Eye protection, no jewellery.',
  battery: 'Negative off first, back on last. No hot work near a gassing battery.',
  fuse: 'Fit the holder with its link out. The link goes in last.',
  passThrough: 'Look at both sides before you drill. Keep clear of fuel, brake lines and airbag wiring.',
  ground: 'Bare metal, a bolt of its own: never a seat belt, airbag, brake or steering bolt.',
  airbag: "No work near airbags and their wiring without training; keep the vehicle maker's waiting time.",
} as const;
