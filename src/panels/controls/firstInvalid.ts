/** The first field that holds something unreadable, focused; a form with one is not sent, so that nothing typed is lost. */
export function focusFirstInvalid(form: HTMLElement | null): boolean {
  const field = form?.querySelector<HTMLElement>('[aria-invalid="true"]') ?? null;
  field?.focus();
  return field !== null;
}
