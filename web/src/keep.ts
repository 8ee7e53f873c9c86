/** What is kept on this device; a browser that keeps nothing is no reason to stop. */
export function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // It is forgotten when the page is closed.
  }
}
