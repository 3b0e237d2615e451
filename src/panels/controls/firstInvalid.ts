/**
 * The first field that holds something unreadable, brought in sight and focused; a form with one is not sent, so that
 * nothing typed is lost.
 */
export function focusFirstInvalid(form: HTMLElement | null): boolean {
  const field = form?.querySelector<HTMLElement>('[aria-invalid="true"]') ?? null;
  // what is folded away cannot be focused
  field?.closest('details')?.setAttribute('open', '');
  field?.focus();
  return field !== null;
}
