"""Days of the calendar as whole numbers, without a clock: ISO 8601 dates, weekdays."""


def day_number(iso: str) -> int:
    """
    Return a day as a number: days since 1970-01-01 [d], in the Gregorian calendar.

    Parameters
    ----------
    iso
        A date that exists, ISO 8601.

    Returns
    -------
    int
        Number of the day; the next day has the next number.

    Examples
    --------
    >>> day_number("1970-01-01"), day_number("2026-10-05")
    (0, 20731)
    """
    year, month, day = map(int, iso.split("-"))
    year -= month <= 2
    era, of_era = divmod(year, 400)
    of_year = (153 * ((month + 9) % 12) + 2) // 5 + day - 1
    return era * 146_097 + of_era * 365 + of_era // 4 - of_era // 100 + of_year - 719_468


def iso_of(number: int) -> str:
    """
    Return the date of a day's number, ISO 8601.

    Examples
    --------
    >>> iso_of(20731), iso_of(day_number("2024-02-29") + 1)
    ('2026-10-05', '2024-03-01')
    """
    era, day = divmod(number + 719_468, 146_097)
    of_era = (day - day // 1460 + day // 36_524 - day // 146_096) // 365
    of_year = day - (365 * of_era + of_era // 4 - of_era // 100)
    turned = (5 * of_year + 2) // 153
    month = (turned + 2) % 12 + 1
    year = era * 400 + of_era + (month <= 2)
    return f"{year:04d}-{month:02d}-{of_year - (153 * turned + 2) // 5 + 1:02d}"


def weekday(number: int) -> int:
    """
    Return the weekday of a day's number, Monday = 0.

    Examples
    --------
    >>> weekday(day_number("2026-10-05"))
    0
    """
    return (number + 3) % 7
