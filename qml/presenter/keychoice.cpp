#include "presenter/keychoice.h"

#include <array>

#include <QKeySequence>

namespace flowhand {

namespace {

/// Keys that lists, fields and buttons have for themselves.
constexpr std::array kReserved = {Qt::Key_Return, Qt::Key_Enter,    Qt::Key_Escape,   Qt::Key_Tab,     Qt::Key_Backtab,
                                  Qt::Key_PageUp, Qt::Key_PageDown, Qt::Key_Shift,    Qt::Key_Control, Qt::Key_Alt,
                                  Qt::Key_AltGr,  Qt::Key_Meta,     Qt::Key_CapsLock, Qt::Key_NumLock};
constexpr std::array kArrows = {Qt::Key_Left, Qt::Key_Right, Qt::Key_Up, Qt::Key_Down};

template <std::size_t size>
bool isOneOf(const std::array<Qt::Key, size>& keys, int key) {
    for (const Qt::Key one : keys)
        if (one == key)
            return true;
    return false;
}

bool isFixed(const KeyUse& use, int key) {
    const bool isFigure = key >= Qt::Key_0 && key <= Qt::Key_9;
    return isOneOf(kReserved, key) || (isOneOf(kArrows, key) && key != use.key) ||
           (isFigure && use.place != KeyPlace::Fly);
}

QString nameOfKey(int key) {
    return QKeySequence(key).toString(QKeySequence::NativeText);
}

QString sectionOf(const KeyUse& use) {
    if (use.isControl)
        return QObject::tr("Fly: on-screen controls");
    switch (use.place) {
    case KeyPlace::Fly:
        return QObject::tr("Fly");
    case KeyPlace::Bench:
        return QObject::tr("Bench");
    case KeyPlace::Review:
        return QObject::tr("Review");
    case KeyPlace::Progress:
        return QObject::tr("Progress");
    case KeyPlace::Library:
        return QObject::tr("Library");
    case KeyPlace::Manual:
        return QObject::tr("Manual");
    case KeyPlace::Everywhere:
        break;
    }
    return QObject::tr("Everywhere");
}

bool meet(const KeyUse& a, const KeyUse& b) {
    return a.place == b.place || a.place == KeyPlace::Everywhere || b.place == KeyPlace::Everywhere;
}

} // namespace

KeyChoice::KeyChoice(QObject* parent)
    : QObject(parent), m_sheet(KeyChoiceRow::staticMetaObject, this), m_rows(KeyChoiceRow::staticMetaObject, this) {
    follow();
}

void KeyChoice::setSettings(Settings* settings) {
    if (m_settings == settings)
        return;
    if (m_settings)
        m_settings->disconnect(this);
    m_settings = settings;
    if (m_settings)
        connect(m_settings, &Settings::changed, this, &KeyChoice::follow);
    follow();
}

void KeyChoice::setPlace(int place) {
    if (place == m_place)
        return;
    m_place = place;
    follow();
}

void KeyChoice::follow() {
    m_table = keyTable(); // in the language of now
    std::vector<KeyChoiceRow> sheet;
    std::vector<KeyChoiceRow> rows;
    QString section;
    for (int index = 0; index < static_cast<int>(m_table.size()); ++index) {
        const KeyUse& use = m_table[static_cast<std::size_t>(index)];
        KeyChoiceRow row = rowOf(index);
        if (isHere(use) && !use.isControl)
            sheet.push_back(row);
        if (use.id.isEmpty())
            continue;
        row.section = sectionOf(use) == section ? QString() : sectionOf(use);
        section = sectionOf(use);
        rows.push_back(std::move(row));
    }
    m_sheet.setRows(sheet);
    m_rows.setRows(rows);
    ++m_revision;
    Q_EMIT changed();
}

KeyChoiceRow KeyChoice::rowOf(int index) const {
    const KeyUse& use = m_table[static_cast<std::size_t>(index)];
    KeyChoiceRow row;
    row.rowId = index;
    row.key = nameOf(use);
    row.action = use.does;
    row.changed = keyOf(use) != use.key;
    return row;
}

bool KeyChoice::isHere(const KeyUse& use) const {
    return use.place == KeyPlace::Everywhere || static_cast<int>(use.place) == m_place;
}

int KeyChoice::keyOf(const KeyUse& use) const {
    if (!m_settings || use.id.isEmpty())
        return use.key;
    const auto own = m_settings->keys().find(use.id);
    if (own == m_settings->keys().end())
        return use.key;
    const QKeySequence keys = QKeySequence::fromString(own->second, QKeySequence::PortableText);
    return keys.isEmpty() ? use.key : static_cast<int>(keys[0].key());
}

QString KeyChoice::nameOf(const KeyUse& use) const {
    return keyOf(use) == use.key ? use.shown : nameOfKey(keyOf(use));
}

int KeyChoice::usual(int key) const {
    bool isMoved = false;
    for (const KeyUse& use : m_table) {
        if (!isHere(use) || use.id.isEmpty())
            continue;
        if (keyOf(use) == key)
            return use.key;
        isMoved = isMoved || use.key == key;
    }
    return isMoved ? 0 : key;
}

QString KeyChoice::shown(const QString& usualNames) const {
    QStringList names;
    for (const QString& name : usualNames.split(QLatin1Char(' '))) {
        QString now = name;
        for (const KeyUse& use : m_table)
            if (isHere(use) && !use.id.isEmpty() && use.shown == name)
                now = nameOf(use);
        names.append(now);
    }
    return names.join(QLatin1Char(' '));
}

QString KeyChoice::problemOf(const KeyUse& use, int key) const {
    if (isFixed(use, key))
        return tr("%1 is needed as it is.").arg(nameOfKey(key));
    for (const KeyUse& other : m_table)
        if (&other != &use && !other.id.isEmpty() && meet(use, other) && keyOf(other) == key)
            return tr("%1 is the key for “%2” already; give that one another key first.")
                .arg(nameOf(other), other.does);
    return {};
}

QString KeyChoice::bind(int row, int key) {
    const KeyUse& use = m_table.at(static_cast<std::size_t>(row));
    const QString problem = problemOf(use, key);
    if (!problem.isEmpty() || !m_settings)
        return problem;
    std::map<QString, QString> keys = m_settings->keys();
    keys.erase(use.id);
    if (key != use.key)
        keys[use.id] = QKeySequence(key).toString(QKeySequence::PortableText);
    m_settings->setKeys(keys);
    return {};
}

QString KeyChoice::restore(int row) {
    return bind(row, m_table.at(static_cast<std::size_t>(row)).key);
}

void KeyChoice::restoreAll() {
    if (m_settings)
        m_settings->setKeys({});
}

} // namespace flowhand
