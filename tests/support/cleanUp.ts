/** Each test starts on an empty page: what a test rendered goes when it ends. */
import { cleanup } from '@testing-library/react';
import { afterEach } from 'vitest';

afterEach(cleanup);
