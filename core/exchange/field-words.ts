/**
 * What people call the columns of a parts list or an order list. Compared without capitals, accents, blanks and
 * punctuation. Trade words in English and German and the commonest ones of four more languages, from common practice
 * (no published source). A word that means two things names both; the column's content decides.
 */
import type { ImportField } from './import-types.ts';

/** "Part no." and "Part #" are the same heading: lower case, no accents, letters and digits only. */
export function plainHeading(text: string): string {
  return text
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .replace(/#/g, ' no ')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
}

const words: Readonly<Record<ImportField, string>> = {
  description:
    'description, what, item, part, parts, part name, name, component, article, title, product, thing, item description, ' +
    'part description, Teil, Bezeichnung, Beschreibung, Artikel, Teilename, Benennung, pièce, désignation, descripción, ' +
    'pieza, descrizione, pezzo, omschrijving, onderdeel',
  partNumber:
    'part no, part number, part num, pn, p/n, sku, number, no, part, article no, item no, item number, product code, code, ' +
    'mpn, reference, ref, stock no, Nr, Teilenummer, Teile-Nr, Artikelnummer, Artikel-Nr, Art.-Nr., Bestellnummer Teil, ' +
    'numéro de pièce, référence, número de pieza, codice, artikelnummer, onderdeelnummer',
  maker:
    'maker, make, brand, manufacturer, mfr, mfg, made by, Hersteller, Marke, marque, fabricant, marca, produttore, merk',
  vendor:
    'vendor, supplier, shop, store, where from, from, source, seller, bought from, dealer, where, Händler, Lieferant, Quelle, ' +
    'Bezugsquelle, Anbieter, fournisseur, proveedor, fornitore, leverancier, Verkäufer',
  link: 'link, url, web, website, page, web page, Verweis, Seite, lien, enlace, Webseite',
  quantity:
    'quantity, qty, q, count, pcs, pieces, needed, number needed, how many, amount needed, ordered, qty ordered, ordered qty, ' +
    'quantity ordered, Menge, Anzahl, Stück, Stk, Bestellmenge, quantité, qté, cantidad, quantità, qta, aantal',
  unit: 'unit, units, uom, unit of measure, Einheit, ME, unité, unidad, unità, eenheid',
  unitPrice:
    'unit price, price, each, price each, unit cost, cost each, cost, ea, per unit, rate, Stückpreis, Einzelpreis, Preis, ' +
    'Preis pro Stück, EP, prix unitaire, prix, precio, precio unitario, prezzo, prezzo unitario, prijs, stukprijs',
  lineTotal:
    'line total, total, extended, ext, ext price, extended price, amount, sum, subtotal, line amount, total price, total cost, ' +
    'Gesamt, Gesamtpreis, Summe, Betrag, GP, montant, total ligne, importe, importo, totale, totaal, bedrag',
  currency: 'currency, curr, ccy, Währung, devise, moneda, valuta',
  shipping:
    'shipping, freight, postage, delivery cost, shipping cost, carriage, Versand, Versandkosten, Porto, Fracht, port, envío, spedizione, verzending',
  tax: 'tax, sales tax, vat, gst, Steuer, MwSt, USt, Mehrwertsteuer, tva, iva, btw',
  discount: 'discount, rebate, reduction, Rabatt, Nachlass, remise, descuento, sconto, korting',
  duty: 'duty, customs, import duty, Zoll, douane, aduana, dazio',
  orderTotal: 'order total, grand total, invoice total, total order, Bestellsumme, Rechnungsbetrag, Gesamtsumme',
  orderNumber:
    'order number, order no, order, order id, po, po number, po no, purchase order, invoice, invoice no, Bestellnummer, ' +
    'Auftrag, Auftragsnummer, Bestell-Nr, Rechnung, commande, numéro de commande, pedido, ordine, bestelnummer',
  orderLine: 'order line, line, line no, line number, pos, position, item no, Pos., Zeile, ligne, línea, riga, regel',
  orderedOn:
    'ordered, order date, date ordered, ordered on, date, bought, purchased, purchase date, bought on, Bestellt, Bestelldatum, ' +
    'bestellt am, Datum, gekauft, commandé, date de commande, pedido el, ordinato, besteld, fecha, data',
  state:
    'state, status, got it, have it, have, got, in hand, stock, where is it, progress, done, Stand, Zustand, Status, vorhanden, ' +
    'état, statut, estado, stato, toestand',
  promisedOn:
    'promised, expected, eta, due, due date, expected date, promised date, delivery date, expected on, promised on, ' +
    'Liefertermin, erwartet, zugesagt, voraussichtlich, prévu, previsto, verwacht',
  arrivedOn:
    'arrived, received, date received, arrival, arrived on, received on, delivered, here, came, Erhalten, eingetroffen, ' +
    'geliefert, angekommen, Eingang, Wareneingang, reçu, recibido, ricevuto, ontvangen',
  shippedQuantity:
    'shipped, qty shipped, shipped qty, quantity shipped, received, qty received, received qty, delivered, Liefermenge, ' +
    'geliefert, expédié, enviado, spedito',
  backorderedQuantity:
    'backordered, back ordered, back order, backorder, bo, qty backordered, Rückstand, offen, outstanding',
  fittedState:
    'fitted, installed, on engine, on the engine, mounted, assembled, eingebaut, montiert, verbaut, monté, montado, montato',
  tracking: 'tracking, tracking no, tracking number, Sendungsnummer, Sendungsverfolgung, Paketnummer, suivi',
  system:
    'system, category, group, section, area, assembly, subsystem, sub assembly, Gruppe, Baugruppe, Bereich, Kategorie, ' +
    'système, groupe, sistema, grupo, gruppo, groep',
  phase: 'phase, stage, step, build phase, Phase, Abschnitt, étape, fase',
  job: 'job, task, work, operation, Arbeit, Aufgabe, Arbeitsgang, tâche, tarea, lavoro',
  priority: 'priority, prio, urgency, importance, must have, Priorität, Wichtigkeit, priorité, prioridad, priorità',
  note: 'note, notes, remark, remarks, comment, comments, memo, info, Bemerkung, Bemerkungen, Notiz, Notizen, Anmerkung, Kommentar, remarque, nota, notas, opmerking',
  paid: 'paid, paid for, payment, bezahlt, payé, pagado, pagato, betaald',
  coreDeposit: 'core, core charge, core deposit, deposit, Pfand, Altteilpfand, consigne',
  bin: 'bin, box, shelf, location, storage, rack, bay, Kiste, Regal, Lagerplatz, Lagerort, Fach, Ort',
};

export interface HeadingMeaning {
  readonly field: ImportField;
  /** 0 for the plainest word for the field, more for words that are further off. */
  readonly distance: number;
}

const meanings = new Map<string, HeadingMeaning[]>();
for (const [field, list] of Object.entries(words) as [ImportField, string][]) {
  list.split(', ').forEach((word, distance) => {
    const plain = plainHeading(word);
    const known = meanings.get(plain) ?? [];
    if (!known.some((meaning) => meaning.field === field)) known.push({ field, distance });
    meanings.set(plain, known);
  });
}

/** The fields that a heading can mean; empty when the word is not known. "Price (USD)" is tried without its brackets. */
export function fieldsOfHeading(heading: string): readonly HeadingMeaning[] {
  if (heading.length > 80) return [];
  const whole = meanings.get(plainHeading(heading));
  if (whole !== undefined) return whole;
  return meanings.get(plainHeading(heading.replace(/[([{][^)\]}]*[)\]}]/g, ''))) ?? [];
}
