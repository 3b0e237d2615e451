import { describe, expect, it } from 'vitest';
import { messages } from '../../src/words/en/messages.ts';

describe('the message after two unlike cables became one', () => {
  it.each([
    ['sae:1/0', 'SAE 1/0'],
    ['mm2:25', '25 mm²'],
    ['auto', 'its size worked out'],
  ])('says what it is now: %s', (size, says) => {
    expect(messages.joined({ name: 'Reducer', size })).toBe(
      `Reducer deleted. Its two cables are one now, as it came in: ${says}.`,
    );
  });
});
