#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QtTest>

#include <set>

#include "bench.h"
#include "problemtext.h"
#include "procedure/scenario.h"

using namespace flowhand;

/// The JSON Schemas for editors know the keys that the program reads and the guide explains, and no others. That the
/// shipped files keep them is tested by schemas.py.
class TestSchemas : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyKeyIsRead_data();
    void everyKeyIsRead();
    void everyKeyOfTheGuideIsInTheSchema_data();
    void everyKeyOfTheGuideIsInTheSchema();
};

namespace {

QJsonObject schemaOf(const QString& kind) {
    QFile file(ASSETS "/schemas/" + kind + ".schema.json");
    if (!file.open(QIODevice::ReadOnly))
        qFatal("no schema of %s", qPrintable(kind));
    return QJsonDocument::fromJson(file.readAll()).object();
}

QString inlineTable(const QJsonObject& schema);

/// Any value of the type that the schema wants, in TOML.
QString anyValue(const QJsonObject& schema) {
    const QString type =
        schema["type"].isArray() ? schema["type"].toArray().first().toString() : schema["type"].toString();
    if (type == "object")
        return inlineTable(schema);
    if (type == "array")
        return "[" + anyValue(schema["items"].toObject()) + "]";
    if (type == "boolean")
        return "true";
    if (type == "integer" || type == "number" || schema.contains("const") ||
        schema["enum"].toArray().first().isDouble())
        return "1";
    return "\"x\"";
}

QString inlineTable(const QJsonObject& schema) {
    QStringList members;
    const QJsonObject properties = schema["properties"].toObject();
    for (const QString& key : properties.keys())
        members << key + " = " + anyValue(properties[key].toObject());
    return "{ " + members.join(", ") + " }";
}

/// A file with every key of the schema.
QString wholeFile(const QJsonObject& schema) {
    QString text;
    const QJsonObject properties = schema["properties"].toObject();
    for (const QString& key : properties.keys())
        text += key + " = " + anyValue(properties[key].toObject()) + "\n";
    return text;
}

QStringList unknownKeys(const QString& kind, const QString& source) {
    Problems problems;
    const std::string name = "bench/" + kind.toStdString() + ".toml";
    if (kind == "flow")
        (void)parseFlow(source.toStdString(), name, benchAircraft(), problems);
    else if (kind == "scenario")
        (void)parseScenario(source.toStdString(), name, benchAircraft(), problems);
    else
        (void)parseAircraft(source.toStdString(), name, problems);
    QStringList unknown;
    for (const Problem& problem : problems.all())
        if (problem.error.code == "unknown-key")
            unknown << QString::fromStdString(problem.error.message);
    return unknown;
}

/// The keys in the first column of the guide's table that begins with `head`.
std::set<QString> keysOfTable(const QString& guide, const QString& head) {
    std::set<QString> keys;
    qsizetype at = guide.indexOf("\n| " + head);
    if (at < 0)
        return keys;
    const QString table = guide.mid(at + 1, guide.indexOf("\n\n", at) - at);
    static const QRegularExpression word("`([a-z_]+)`");
    for (const QString& row : table.split('\n').mid(2))
        for (auto match = word.globalMatch(row.section('|', 1, 1)); match.hasNext();)
            keys.insert(match.next().captured(1));
    return keys;
}

std::set<QString> keysOf(const QJsonObject& schema) {
    const QStringList keys = schema["properties"].toObject().keys();
    return {keys.begin(), keys.end()};
}

QJsonObject schemaAt(const QJsonObject& schema, const QString& key) {
    return schema["properties"].toObject()[key].toObject();
}

QString listed(const std::set<QString>& keys) {
    return QStringList(keys.begin(), keys.end()).join(' ');
}

} // namespace

void TestSchemas::everyKeyIsRead_data() {
    QTest::addColumn<QString>("kind");
    for (const char* kind : {"flow", "scenario", "aircraft"})
        QTest::newRow(kind) << kind;
}

void TestSchemas::everyKeyIsRead() {
    QFETCH(QString, kind);
    const QString source = wholeFile(schemaOf(kind));
    QCOMPARE(unknownKeys(kind, source).join('\n'), QString());
    QCOMPARE(unknownKeys(kind, source + "another = 1\n").size(), 1);
}

void TestSchemas::everyKeyOfTheGuideIsInTheSchema_data() {
    QTest::addColumn<QString>("head");
    QTest::addColumn<QString>("kind");
    QTest::addColumn<QString>("list");
    QTest::newRow("step") << "key of `[[step]]`"
                          << "flow"
                          << "step";
    QTest::newRow("event") << "key of `[[event]]`"
                           << "scenario"
                           << "event";
    QTest::newRow("control") << "key of `[[control]]`"
                             << "aircraft"
                             << "control";
}

void TestSchemas::everyKeyOfTheGuideIsInTheSchema() {
    QFETCH(QString, head);
    QFETCH(QString, kind);
    QFETCH(QString, list);
    QFile file(PROCEDURES "/README.md");
    QVERIFY(file.open(QIODevice::ReadOnly));
    std::set<QString> explained = keysOfTable(QString::fromUtf8(file.readAll()), head);
    std::set<QString> known = keysOf(schemaAt(schemaOf(kind), list)["items"].toObject());
    if (list == "event") // a failure's own, in the table of failures
        for (const char* key : {"engine", "side", "apart", "drag"})
            known.erase(key);
    QVERIFY(!explained.empty());
    QCOMPARE(listed(explained), listed(known));
}

QTEST_APPLESS_MAIN(TestSchemas)
#include "test_schemas.moc"
