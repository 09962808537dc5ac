#include <QQmlEngine>
#include <QtTest>
class TestQml : public QObject {
    Q_OBJECT
};
QTEST_MAIN(TestQml)
#include "test_qml.moc"
