// Makes the heads of sortable tables into buttons. Without script the table stands in order of rank.
for (const table of document.querySelectorAll('table.sortable')) {
  const heads = [...table.tHead.rows[0].cells];
  const body = table.tBodies[0];
  const original = [...body.rows];
  const value = (row, column) => {
    const cell = row.cells[column];
    return cell.dataset.sort ?? cell.textContent.trim();
  };
  const compare = (a, b) => {
    if (a === '' || b === '') return a === b ? 0 : a === '' ? 1 : -1;
    const x = Number(a);
    const y = Number(b);
    return Number.isNaN(x) || Number.isNaN(y) ? a.localeCompare(b, 'en') : x - y;
  };
  heads.forEach((head, column) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const descending = head.getAttribute('aria-sort') === 'ascending';
      for (const other of heads) other.removeAttribute('aria-sort');
      head.setAttribute('aria-sort', descending ? 'descending' : 'ascending');
      const rows = [...original].sort((a, b) => {
        const p = value(a, column);
        const q = value(b, column);
        // Rows without a value stay last either way.
        return p === '' || q === '' ? compare(p, q) : (descending ? -1 : 1) * compare(p, q);
      });
      body.append(...rows);
    });
  });
}
